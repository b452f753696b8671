/** What `starts with` says that no work leaves behind: a joint that is closed, and its seal lies outside. */
import type { Procedure } from '../../grammar/syntax/tree.ts';
import { inPlace } from './aspects.ts';
import { type CaseSet, NONE } from './cases.ts';
import { claimed } from './contract.ts';
import type { Run } from './run.ts';

/** Facts `start-without-seal`, once all that the header claims has been made so. */
export function startFaults(run: Run, procedure: Procedure, file: string): void {
  const { cases, model } = run;
  for (const header of procedure.headers) {
    if (header.header !== 'starts with') continue;
    for (const claim of header.claims) {
      if (claim.scope !== 'things' || claim.state?.text !== 'off') continue;
      for (const { thing, items } of claimed(model, claim)) {
        if (thing.type !== 'seal') continue;
        const out: number[] = [];
        const over: number[] = [];
        let all: CaseSet = NONE;
        for (const item of items) {
          // A seal between two parts may well be out while one of them is on.
          const joints = model.sealedParts[item]!;
          let closed: CaseSet = joints.length > 0 ? cases.and(run.within, thing.exists) : NONE;
          for (const joint of joints) closed = run.where('place', joint, inPlace(run.thing(joint)), closed);
          if (closed === NONE) continue;
          out.push(item);
          over.push(...joints);
          all = cases.or(all, closed);
        }
        if (all === NONE) continue;
        const parts = [...new Set(over.map((joint) => run.thing(joint)))];
        run.fact({
          check: 'start-without-seal',
          at: { file, start: claim.start, end: claim.end },
          subject: { thing, items: out },
          others: parts.map((part) => ({
            thing: part,
            items: over.filter((joint) => run.thing(joint) === part),
          })),
          cases: all,
        });
      }
    }
  }
}
