/**
 * What goes on a thing before its joint closes: compounds (`coated with`) and lubricants (`lubricated with`). A thing
 * that came off and goes back asks for them again. A face has to have it when its joint closes; anything else may get
 * it until the end of the job, since the lip of a seal is often greased in place. See grammar/STATE.md.
 */
import type { Action } from '../../../grammar/syntax/tree.ts';
import type { Model, Thing } from '../../model/model.ts';
import { BARE, bit, COVERED, FINAL, not, WENT_IN_BARE } from '../aspects.ts';
import type { CaseSet } from '../cases.ts';
import type { Run } from '../run.ts';
import { beginCuring, overFace, withOf } from './curing.ts';

type Kind = 'coated' | 'oiled';
const KINDS: readonly Kind[] = ['coated', 'oiled'];

function wantedOf(thing: Thing, kind: Kind): readonly string[] {
  return kind === 'coated' ? thing.coatedWith : thing.lubricatedWith;
}

/** `coat`, `lubricate`: of another compound than the declared one `fluid-differs` tells; it is on all the same. */
export function coat(run: Run, items: readonly number[], action: Action): void {
  const used = withOf(action);
  for (const item of items) {
    for (const one of jointOf(run.model, item)) {
      const thing = run.thing(one);
      for (const kind of KINDS) {
        const wanted = wantedOf(thing, kind);
        if (wanted.length === 0) continue;
        const meant = wanted.some((name) => used.includes(name));
        const only = wantedOf(thing, kind === 'coated' ? 'oiled' : 'coated').length === 0;
        const verb = (kind === 'coated') === (action.verb === 'coat');
        if (!meant && !only && !(used.length === 0 && verb)) continue;
        // A bolt that is tight has no room for grease.
        const open = thing.type === 'fastener' ? run.where('place', one, not(FINAL)) : run.within;
        run.set(kind, one, COVERED, open);
      }
    }
    beginCuring(run, item, used);
  }
}

/** What is on it is wiped off: it came off, its joint was parted, or it was cleaned. */
export function wipe(run: Run, item: number, within: CaseSet = run.within): void {
  const thing = run.thing(item);
  for (const kind of KINDS) if (wantedOf(thing, kind).length > 0) run.set(kind, item, BARE, within);
}

/** It goes in: what it has to have on is on it, comes with this step, or is told at the end. */
export function goesIn(run: Run, item: number, within: CaseSet): void {
  const thing = run.thing(item);
  if (thing.coatedWith.length === 0 && thing.lubricatedWith.length === 0) return;
  let comes = false;
  for (const kind of KINDS) {
    const wanted = wantedOf(thing, kind);
    if (wanted.length === 0) continue;
    if (saysIt(run, wanted)) {
      comes = true;
      run.set(kind, item, COVERED, within);
    } else run.set(kind, item, WENT_IN_BARE, run.where(kind, item, bit(BARE), within));
  }
  if (comes) beginCuring(run, item, withOf(run.steps.present!.action), within);
}

/** The joint at the face closes under `item`. */
export function faceCloses(run: Run, item: number, face: number, within: CaseSet): void {
  const thing = run.thing(face);
  for (const kind of KINDS) {
    const wanted = wantedOf(thing, kind);
    if (wanted.length === 0) continue;
    if (saysIt(run, wanted)) run.set(kind, face, COVERED, within);
    else run.require(CHECKS[kind], item, kind, face, bit(COVERED), COVERED, within, 'disturbed');
  }
}

export const CHECKS: Readonly<Record<Kind, string>> = {
  coated: 'compound-missing',
  oiled: 'lubricant-missing',
};

/** The thing and what it meets in its joint: a compound on the gasket is a compound on the face as well. */
function jointOf(model: Model, item: number): Set<number> {
  const joint = new Set([item, ...model.faces[item]!]);
  for (const seal of model.seals[item]!) for (const face of model.faces[seal]!) joint.add(face);
  if (model.thingOf[item]!.type === 'face') for (const over of overFace(model, item)) joint.add(over);
  return joint;
}

/** The step brings it along: `fit new ring with grease`, or a sentence that names it. */
function saysIt(run: Run, wanted: readonly string[]): boolean {
  const { action } = run.steps.present!;
  if (withOf(action).some((name) => wanted.includes(name))) return true;
  const text = action.text?.value.toLowerCase();
  if (text === undefined) return false;
  if (/\b(coat|lubricat|greas|oil(?:s|ed)?\b|compound|sealant|paste)/.test(text)) return true;
  return wanted.some((name) => {
    const title = run.model.byName.get(name)?.title.toLowerCase() ?? name;
    return text.includes(title) || text.includes(name.replaceAll('-', ' ').toLowerCase());
  });
}
