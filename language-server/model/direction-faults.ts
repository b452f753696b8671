/**
 * Directions that a step says the wrong way round. Fact `vacuum-reversed`: a reading of a vacuum pump bounded from
 * below, where a lower pressure is the better one. Fact `direction-differs`: clockwise against the thread of a fastener, or
 * against the way a valve turns.
 */
import { findQuantities, type Quantity } from '../../grammar/quantity/index.ts';
import type { Action, Span } from '../../grammar/syntax/tree.ts';
import { readThread } from '../fastening/index.ts';
import type { Fact } from './facts.ts';
import { readTyped, said } from './fastening-amounts.ts';
import { clauseOf } from './fastening-declared.ts';
import type { Model, Thing } from './model.ts';

export function directionFaults(model: Model, action: Action, file: string): Fact[] {
  return [...vacuumFaults(model, action, file), ...turningFaults(model, action, file)];
}

/**
 * Units in which a vacuum is read as what is left: less is deeper. Inches of mercury and bar may be read from the
 * surrounding air downwards, so nothing is said of them.
 */
const LEFT_OVER: ReadonlySet<string> = new Set(['micron', 'Torr', 'psia', 'Pa', 'hPa', 'mbar']);

function vacuumFaults(model: Model, action: Action, file: string): Fact[] {
  if (action.verb !== 'evacuate') return [];
  const facts: Fact[] = [];
  const tell = (quantity: Quantity, at: Span, typed: string) => {
    if (!LEFT_OVER.has(quantity.unit.symbol)) return;
    const most = quantity.low ?? quantity.nominal;
    facts.push({
      check: 'vacuum-reversed',
      at: { file, start: at.start, end: at.end },
      words: {
        typed,
        most: most ? said({ form: 'value', unit: quantity.unit, low: most, high: most, nominal: most }) : '',
      },
    });
  };
  for (const tail of action.tails) {
    if (tail.tail !== 'to' && tail.tail !== 'not under') continue;
    const quantity = readTyped(tail.quantity, model.values);
    const below = tail.tail === 'not under' || quantity?.form === 'at least' || quantity?.form === 'over';
    if (quantity && tail.quantity && below) {
      if (tail.tail === 'to') tell(quantity, tail.quantity, said(quantity));
      else tell(quantity, tail, `not under ${said(quantity)}`);
    }
  }
  const texts = [action.text, ...action.tails.map((tail) => ('text' in tail ? tail.text : undefined))];
  for (const text of texts) {
    if (!text || !/\d/.test(text.value)) continue;
    for (const { from, to, quantity } of findQuantities(text.value)) {
      const more = /^,? (?:or|and) (?:more|higher|above|over|greater)\b/i.exec(text.value.slice(to));
      const least = /\b(?:at least|no(?:t)? less than|a minimum of) $/i.exec(text.value.slice(0, from));
      if (more || least)
        tell(quantity, text, `${least?.[0] ?? ''}${text.value.slice(from, to)}${more?.[0] ?? ''}`);
    }
  }
  return facts;
}

const OPENING: ReadonlySet<string> = new Set(['open', 'loosen', 'remove', 'back off']);
const CLOSING: ReadonlySet<string> = new Set(['close', 'tighten', 'fit', 'refit']);

function turningFaults(model: Model, action: Action, file: string): Fact[] {
  const closing = CLOSING.has(action.verb);
  if (!action.text || (!closing && !OPENING.has(action.verb))) return [];
  const told = turnIn(action.text.value);
  if (told === undefined) return [];
  for (const { name } of action.objects) {
    const thing = model.byName.get(name.text);
    const closes = thing && closesBy(thing);
    if (!thing || !closes || (told === closes) === closing) continue;
    const { start, end } = action.text;
    return [
      {
        check: 'direction-differs',
        at: { file, start, end },
        subject: { thing },
        words: {
          told,
          right: told === 'clockwise' ? 'counter-clockwise' : 'clockwise',
          closing: closing ? 'yes' : '',
          fastener: thing.type === 'fastener' ? 'yes' : '',
          leftHand: thing.type === 'fastener' && closes === 'counter-clockwise' ? 'yes' : '',
        },
        story: [{ at: thing.place, what: 'declared', thing }],
      },
    ];
  }
  return [];
}

type Turn = 'clockwise' | 'counter-clockwise';

/** The one direction that a sentence names; none where it names both, or says which one not to take. */
function turnIn(sentence: string): Turn | undefined {
  const counter = /\b(?:counter-?|anti-?)clockwise\b/i.test(sentence);
  const clock = /(?<!counter-?|anti-?)\bclockwise\b/i.test(
    sentence.replace(/\b(?:counter|anti)-clockwise\b/gi, ''),
  );
  if (counter === clock || /\bnot\b|\bnever\b/i.test(sentence)) return undefined;
  return counter ? 'counter-clockwise' : 'clockwise';
}

/** Which way it goes to: known of a valve that says so, and of a fastener whose thread is declared. */
function closesBy(thing: Thing): Turn | undefined {
  if (clauseOf(thing, 'closes clockwise')) return 'clockwise';
  if (clauseOf(thing, 'closes counter-clockwise')) return 'counter-clockwise';
  if (thing.type !== 'fastener') return undefined;
  if (clauseOf(thing, 'left-hand')) return 'counter-clockwise';
  const designation = clauseOf(thing, 'thread')?.designation?.text;
  const reading = designation === undefined ? undefined : readThread(designation);
  if (!reading?.ok) return undefined;
  return reading.thread.leftHand ? 'counter-clockwise' : 'clockwise';
}
