/** An upright rectangle in pixels from the upper left corner of the picture. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

export const overlap = (a: Rectangle, b: Rectangle): boolean => a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

export const lies = (inner: Rectangle, outer: Rectangle): boolean =>
  inner.x >= outer.x && inner.y >= outer.y && inner.x + inner.width <= outer.x + outer.width && inner.y + inner.height <= outer.y + outer.height;

export const contains = ({ x, y, width, height }: Rectangle, point: Point): boolean => point.x >= x && point.x <= x + width && point.y >= y && point.y <= y + height;

export const grown = ({ x, y, width, height }: Rectangle, by: number): Rectangle => ({ x: x - by, y: y - by, width: width + 2 * by, height: height + 2 * by });
