/**
 * Where the holes and numbers of a tightening order stand on the paper. Circles, rows and given coordinates keep
 * their shape; they are made so large that every number can be read, and each position number finds a free side
 * of its hole.
 */
import { type Box, boxAround, hull, overlap, type Spot } from './boxes.ts';
import { SMALL, textWidth } from './svg.ts';

/** A group of fasteners and the order in which they are worked. */
export interface OrderPicture {
  /** Name of the thing in the machine file. */
  readonly thing: string;
  /** For readers: `head bolts`. */
  readonly name: string;
  readonly layout: 'circle' | 'rows' | 'places';
  /** Where each position lies; any one unit, y upwards. */
  readonly places: readonly { readonly position: string; readonly x: number; readonly y: number }[];
  /** Names of the positions in the order of work. A position that is not in it is not worked. */
  readonly sequence: readonly string[];
  /** Where #1 lies, in the author's words. */
  readonly first?: string;
  /** The order was typed position by position, not by a name such as `across`. */
  readonly listed: boolean;
  /** What is done in this order, pass by pass: `Tighten to 22 N·m.` */
  readonly passes: readonly string[];
}

export interface Hole extends Spot {
  readonly position: string;
  /** Which it is in the order, from 1; undefined where it is not worked. */
  readonly order: number | undefined;
  /** Where `#3` stands: the middle of the text. */
  readonly label: Spot;
  readonly labelBox: Box;
}

export interface OrderLayout {
  readonly holes: readonly Hole[];
  readonly radius: number;
  readonly width: number;
  readonly height: number;
}

/** Room for a two-digit number at a readable size. */
const RADIUS = 14;
const LEAST_RADIUS = 10.5;
const LABEL_HEIGHT = 14;
const MARGIN = 6;
/** A hole and its position number need this much room. */
const PITCH = 50;
const LEAST_PITCH = 2 * LEAST_RADIUS + LABEL_HEIGHT + 6;
const LEAST_ON_CIRCLE = 31;
/** On a circle the position numbers stand outside: holes may be as near as this. */
const CIRCLE_PITCH = 2 * RADIUS + 4;

/** `width`: how wide it should be at the most, px. It becomes wider where numbers could not be told apart. */
export function layOutOrder(picture: OrderPicture, width: number): OrderLayout {
  const { places } = picture;
  const spots = scaled(picture, width);
  const near = nearest(spots);
  const between = picture.layout === 'circle' ? 3 : LABEL_HEIGHT + 6;
  const radius = Math.max(Math.min(RADIUS, (near - between) / 2), LEAST_RADIUS);
  const middle = {
    x: (Math.min(...spots.map(({ x }) => x)) + Math.max(...spots.map(({ x }) => x))) / 2,
    y: (Math.min(...spots.map(({ y }) => y)) + Math.max(...spots.map(({ y }) => y))) / 2,
  };
  const taken: Box[] = spots.map((spot) => boxAround(spot, 2 * radius + 2, 2 * radius + 2));
  const holes = places.map(({ position }, index): Hole => {
    const spot = spots[index]!;
    const size = { width: textWidth(`#${position}`, SMALL) + 4, height: LABEL_HEIGHT };
    const sides = sidesOf(spot, middle, picture.layout === 'circle', radius, size);
    // The side with the least in the way; the first one of these.
    const costs = sides.map((side) => {
      const box = boxAround(side, size.width, size.height);
      return taken.reduce((sum, other) => sum + overlap(box, other), 0);
    });
    const label = sides[costs.indexOf(Math.min(...costs))]!;
    const labelBox = boxAround(label, size.width, size.height);
    taken.push(labelBox);
    const at = picture.sequence.indexOf(position);
    return { ...spot, position, order: at < 0 ? undefined : at + 1, label, labelBox };
  });
  const all = hull(taken) ?? { x: 0, y: 0, width: 0, height: 0 };
  // A drawing narrower than asked stands in the middle.
  const wide = Math.max(width, all.width + 2 * MARGIN);
  const dx = (wide - all.width) / 2 - all.x;
  const dy = MARGIN - all.y;
  const move = <S extends Spot>(spot: S): S => ({ ...spot, x: spot.x + dx, y: spot.y + dy });
  return {
    holes: holes.map((hole) => ({ ...move(hole), label: move(hole.label), labelBox: move(hole.labelBox) })),
    radius,
    width: wide,
    height: all.height + 2 * MARGIN,
  };
}

/** Places in px, y downwards: as large as fits, no larger than looks well, no smaller than can be read. */
function scaled({ places, layout }: OrderPicture, width: number): Spot[] {
  const flat = places.map(({ x, y }) => ({ x, y: -y }));
  if (flat.length < 2) return flat.map(() => ({ x: 0, y: 0 }));
  const xs = flat.map(({ x }) => x);
  const ys = flat.map(({ y }) => y);
  const wide = Math.max(...xs) - Math.min(...xs);
  const high = Math.max(...ys) - Math.min(...ys);
  const room = width - 2 * MARGIN - 2 * RADIUS - 56;
  const near = nearest(flat);
  const fits = Math.min(room / Math.max(wide, 1e-9), (1.1 * room) / Math.max(high, 1e-9));
  const pitch = layout === 'circle' ? CIRCLE_PITCH : PITCH;
  // Wider than asked, rather than numbers on top of each other; but not without end for two places nearly at one.
  const apart = (layout === 'circle' ? LEAST_ON_CIRCLE : LEAST_PITCH) / near;
  const least = apart * wide > 3 * width ? (2 * LEAST_RADIUS + 3) / near : apart;
  const looksWell = (layout === 'circle' ? Math.max(pitch, 78) : 64) / near;
  const wanted = Math.max(Math.min(fits, looksWell), Math.min(pitch / near, fits));
  const scale = Number.isFinite(wanted) ? Math.max(wanted, least) : 1;
  return flat.map(({ x, y }) => ({ x: x * scale, y: y * scale }));
}

/** The smallest distance between two of the places that are apart. */
function nearest(spots: readonly Spot[]): number {
  let least = Number.POSITIVE_INFINITY;
  spots.forEach((a, index) => {
    for (const b of spots.slice(index + 1)) {
      const distance = Math.hypot(a.x - b.x, a.y - b.y);
      if (distance > 1e-9) least = Math.min(least, distance);
    }
  });
  return least;
}

/** Where a position number may stand: away from the middle first on a circle, below first elsewhere. */
function sidesOf(
  spot: Spot,
  middle: Spot,
  round: boolean,
  radius: number,
  size: { width: number; height: number },
): Spot[] {
  const beside = radius + 3 + size.width / 2;
  const above = radius + 2 + size.height / 2;
  const sides = [
    { x: spot.x, y: spot.y + above },
    { x: spot.x + beside, y: spot.y },
    { x: spot.x - beside, y: spot.y },
    { x: spot.x, y: spot.y - above },
  ];
  if (!round) return sides;
  const dx = spot.x - middle.x;
  const dy = spot.y - middle.y;
  const distance = Math.hypot(dx, dy) || 1;
  // Far enough out that neither a wide nor a high label touches its hole.
  const out = radius + 3 + Math.hypot((size.width * dx) / distance, (size.height * dy) / distance) / 2;
  return [{ x: spot.x + (dx / distance) * out, y: spot.y + (dy / distance) * out }, ...sides];
}
