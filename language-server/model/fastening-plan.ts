/**
 * The tightening plan of a thing against itself: stages that fall or leap, an angle with nothing to count it from, an
 * angle above one turn, a torque without an upper end. Needs neither thread nor class.
 */
import { exact, type Quantity } from '../../grammar/quantity/index.ts';
import type { Fact } from './facts.ts';
import { readTyped, said, torqueBand } from './fastening-amounts.ts';
import { type Declared, type DeclaredStage, firstOf, placeIn } from './fastening-declared.ts';
import type { Model } from './model.ts';

export function planFaults(model: Model, one: Declared): Fact[] {
  const { thing } = one;
  const facts: Fact[] = [];
  const tell = (fact: Omit<Fact, 'subject' | 'cases'>) =>
    facts.push({ ...fact, subject: { thing }, cases: model.cases.and(model.built, thing.exists) });
  /** The stage that holds the joint together now; none at the start and after a stage that loosens. */
  let seated: DeclaredStage | undefined;
  for (const each of one.stages) {
    const { stage, number, at } = each;
    switch (stage.kind) {
      case 'angle': {
        const angle = readTyped(stage.quantity, model.values);
        if (!seated)
          tell({ check: 'angle-before-torque', at, words: { stage: String(number), angle: textOf(angle) } });
        if (angle && isMisread(angle))
          tell({ check: 'angle-too-large', at, words: { angle: said(angle), ...meantAngle(angle) } });
        seated = each;
        break;
      }
      case 'torque':
      case 'percent':
      case 'again': {
        const before = seated?.torque;
        if (each.torque && before && stage.kind !== 'again' && isBelow(each.torque, before)) {
          tell({
            check: 'stage-out-of-order',
            at,
            words: {
              stage: String(number),
              torque: said(each.torque),
              before: said(before),
              beforeStage: String(seated?.number),
            },
            story: seated ? [{ at: seated.at, what: 'declared', thing }] : [],
          });
        } else if (each.torque && before && seated && isFarBelow(one, seated, each)) {
          tell({
            check: 'stages-far-apart',
            at: seated.at,
            words: {
              stage: String(seated.number),
              torque: said(before),
              next: said(each.torque),
              nextStage: String(number),
              share: String(Math.max(1, Math.round(shareOf(before, each.torque) * 100))),
            },
            story: [{ at, what: 'declared', thing }],
          });
        }
        seated = each;
        break;
      }
      case 'by hand':
      case 'until':
      case 'back off':
        seated = each;
        break;
      case 'loosen':
        seated = undefined;
        break;
      case 'wait':
        break;
    }
  }
  const last = one.stages.findLast(({ stage }) => stage.kind !== 'wait');
  if (one.torque && thing.torque && last?.torque && last.typed && !sameTorque(one.torque, last.torque)) {
    tell({
      check: 'torque-differs',
      at: placeIn(thing, firstOf(thing.torque)),
      words: { typed: said(one.torque), declared: said(last.torque), plan: 'yes' },
      story: [{ at: last.at, what: 'declared', thing }],
    });
  }
  for (const { torque, at } of unbounded(one))
    tell({ check: 'torque-unbounded', at, words: { torque: said(torque) } });
  return facts;
}

/** An angle in degrees above one turn: usually the degree sign of a printed table was read as a zero. */
export function isMisread(angle: Quantity): boolean {
  return angle.unit.symbol === '°' && angle.nominal !== undefined && exact.toNumber(angle.nominal) > 360;
}

/** `900°` was 90°. */
export function meantAngle({ nominal }: Quantity): { meant?: string } {
  const typed = nominal === undefined ? '' : String(exact.toNumber(nominal));
  return /^\d+0$/.test(typed) && Number(typed) / 10 <= 360 ? { meant: `${Number(typed) / 10}°` } : {};
}

function unbounded(one: Declared): { torque: Quantity; at: DeclaredStage['at'] }[] {
  if (one.limit) return [];
  const clause = one.thing.torque;
  const whole = clause && one.torque ? [{ torque: one.torque, at: placeIn(one.thing, firstOf(clause)) }] : [];
  const stages = one.stages.flatMap(({ torque, at, typed }) => (torque && typed ? [{ torque, at }] : []));
  // An angle or a feel behind it ends the turning.
  const last = one.stages.findLast(({ stage }) => stage.kind !== 'wait');
  const ended = last !== undefined && last.torque === undefined;
  return [...whole, ...(ended ? [] : stages)].filter(
    ({ torque }) => torque.form === 'at least' || torque.form === 'over',
  );
}

/** The bands of both meet: a tolerance or a fair rounding in another unit is no difference. */
function sameTorque(first: Quantity, second: Quantity): boolean {
  const [a, b] = [torqueBand(first), torqueBand(second)];
  return !a || !b || (a.low <= b.high * 1.03 && b.low <= a.high * 1.03);
}

function isBelow(torque: Quantity, before: Quantity): boolean {
  const [now, then] = [torqueBand(torque), torqueBand(before)];
  return now !== undefined && then !== undefined && now.high < then.low;
}

/**
 * A stage below this share of the next one brings the parts no nearer. Passes go by thirds or halves (30, 70 and 100 %:
 * ASME PCC-1, legacy torque method); the limit itself is judgement, no source.
 */
const FAR_BELOW = 0.22;

/** To make snug: 15 to 30 N·m, whatever the size of the bolt (ASME PCC-1, from memory; a published pass list has 10 to 20 lbf·ft). */
const SNUG = { low: 13, high: 31 };

function isFarBelow(one: Declared, before: DeclaredStage, after: DeclaredStage): boolean {
  const share = shareOf(before.torque, after.torque);
  if (!(share > 0) || share >= FAR_BELOW) return false;
  const first = one.stages.find(({ torque }) => torque);
  const snug = torqueBand(before.torque);
  if (before !== first || !snug || snug.low < SNUG.low || snug.high > SNUG.high) return true;
  // Snug, then passes that begin with a third.
  return shareOf(after.torque, one.final) > 0.4;
}

/** The middle of one torque as a share of another's. */
function shareOf(part: Quantity | undefined, whole: Quantity | undefined): number {
  const [a, b] = [torqueBand(part), torqueBand(whole)];
  if (!a || !b || !Number.isFinite(a.high) || !Number.isFinite(b.high)) return Number.NaN;
  return (a.low + a.high) / (b.low + b.high);
}

function textOf(angle: Quantity | undefined): string {
  return angle ? said(angle) : '';
}
