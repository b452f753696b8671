/**
 * Fluids and compounds that a step uses against those that are declared: what a system `holds`, what a joint is `coated
 * with` or `lubricated with`. Fact `fluid-differs`. Flushing is everyday work: what is drained again later may be
 * anything. Where a fluid or the thing is there in some variants only, nothing is said.
 */
import type { Action, Ref } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { clauseOf, placeIn } from './fastening-declared.ts';
import type { Model, Thing } from './model.ts';
import type { Survey } from './survey.ts';

export function fluidFaults(model: Model, survey: Survey, file: { readonly path: string }): Fact[] {
  const actions = survey.each('fluids', [], (one) =>
    one.kind === 'action' && (WANTS[one.verb] || EMPTIES.has(one.verb)) ? [one] : [],
  );
  if (!actions.some(({ verb }) => verb in WANTS)) return [];
  return actions.flatMap((action, index) => {
    const wants = WANTS[action.verb];
    if (!wants) return [];
    const used = usedIn(model, action);
    if (used.length === 0) return [];
    const flushed = (thing: Thing) =>
      actions.slice(index + 1).some((later) => EMPTIES.has(later.verb) && names(later, thing));
    return action.objects.flatMap((ref): Fact[] => {
      const thing = model.byName.get(ref.name.text);
      if (!thing || sometimes(thing) || (thing.type === 'system' && flushed(thing))) return [];
      const { allowed, place } = declaredFor(thing, wants);
      if (allowed.length === 0 || !place || used.some(({ name }) => allowed.includes(name.text))) return [];
      const [wrong] = used;
      const declared = allowed.flatMap((name) => model.byName.get(name) ?? []);
      if (!wrong || declared.length === 0 || declared.some(sometimes)) return [];
      const other = model.byName.get(wrong.name.text)!;
      if (sometimes(other)) return [];
      return [
        {
          check: 'fluid-differs',
          at: { file: file.path, start: wrong.start, end: wrong.end },
          subject: { thing },
          others: [{ thing: other }],
          words: { declared: declared[0]!.title, name: declared[0]!.name, clause: place.clause },
          story: [{ at: placeIn(thing, place.span), what: 'declared', thing }],
        },
      ];
    });
  });
}

const FILLED = ['holds'] as const;
const PUT_ON = ['coated with', 'lubricated with'] as const;

const WANTS: Readonly<Record<string, typeof FILLED | typeof PUT_ON>> = {
  fill: FILLED,
  'top up': FILLED,
  coat: PUT_ON,
  lubricate: PUT_ON,
};

const EMPTIES: ReadonlySet<string> = new Set(['drain', 'recover', 'fill']);

function declaredFor(thing: Thing, clauses: typeof FILLED | typeof PUT_ON) {
  const allowed: string[] = [];
  let place: { clause: string; span: { start: number; end: number } } | undefined;
  for (const name of clauses) {
    const clause = clauseOf(thing, name);
    if (!clause) continue;
    const refs = clause.clause === 'holds' ? (clause.fluid ? [clause.fluid] : []) : clause.refs;
    if (refs.length > 0) place ??= { clause: name, span: clause };
    allowed.push(...refs.map((ref) => ref.name.text));
  }
  return { allowed, place };
}

/** The fluids and consumables that a step names; a brush or a can is none. */
function usedIn(model: Model, action: Action): Ref[] {
  return action.tails.flatMap((tail) =>
    tail.tail === 'with'
      ? tail.refs.filter(({ name }) => /^(fluid|consumable)$/.test(model.byName.get(name.text)?.type ?? ''))
      : [],
  );
}

function names(action: Action, thing: Thing): boolean {
  return action.objects.some(({ name }) => name.text === thing.name);
}

function sometimes(thing: Thing): boolean {
  return clauseOf(thing, 'only') !== undefined;
}
