/** The greater of the differences in latitude and longitude, degrees; longitude counted the short way around. */
export function degreesApart(a: { readonly latitude: number; readonly longitude: number }, b: { readonly latitude: number; readonly longitude: number }): number {
  const turn = Math.abs(a.longitude - b.longitude) % 360;
  return Math.max(Math.abs(a.latitude - b.latitude), Math.min(turn, 360 - turn));
}
