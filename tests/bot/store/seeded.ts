/** Numbers from 0 to 1, the same for the same seed (Park and Miller's minimal standard generator). */
export function seeded(seed: number): () => number {
  const MODULUS = 2_147_483_647;
  let state = seed;
  return () => {
    state = (state * 48_271) % MODULUS;
    return state / MODULUS;
  };
}
