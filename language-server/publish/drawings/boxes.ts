/** Rectangles of a drawing, for keeping labels apart. Plain geometry, px, y downwards. */

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export function boxAround(middle: Spot, width: number, height: number): Box {
  return { x: middle.x - width / 2, y: middle.y - height / 2, width, height };
}

/** How much two boxes have in common, in px². */
export function overlap(a: Box, b: Box): number {
  const wide = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const high = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return wide > 0 && high > 0 ? wide * high : 0;
}

/** The smallest box around all; undefined where there are none. */
export function hull(boxes: readonly Box[]): Box | undefined {
  if (boxes.length === 0) return undefined;
  const x = Math.min(...boxes.map((one) => one.x));
  const y = Math.min(...boxes.map((one) => one.y));
  return {
    x,
    y,
    width: Math.max(...boxes.map((one) => one.x + one.width)) - x,
    height: Math.max(...boxes.map((one) => one.y + one.height)) - y,
  };
}
