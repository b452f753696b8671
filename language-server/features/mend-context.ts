/**
 * What a change is made from: the finding, its step, what it is about and the steps of its story, in a text that was
 * read. Makes no changes.
 */
import type { Edit } from '../../grammar/format/format.ts';
import type { Action } from '../../grammar/syntax/tree.ts';
import type { Model } from '../model/model.ts';
import type { About, Finding } from '../report/finding.ts';
import { type Outline, type Spot, spotAt } from './mend-outline.ts';
import { type Named, namedIn } from './mend-steps.ts';

export interface Context {
  text: string;
  finding: Finding;
  about: About;
  outline: Outline;
  model: Model;
  /** The step that the finding is at. */
  spot: Spot;
  /** That step, where it is an action. */
  action: Action | undefined;
  subject: Named | undefined;
  others: Named[];
  /** The earlier steps of the story. */
  related: Spot[];
  /** Other things of which the same is said at the same step. */
  alike: Named[];
}

export type Changes = Generator<Edit[]>;

export function contextOf(
  text: string,
  finding: Finding,
  findings: readonly Finding[],
  outline: Outline,
  model: Model,
): Context | undefined {
  const { about } = finding;
  const found = spotAt(outline, finding.start, finding.end);
  // What the heading says is off at the start has no step that it is about.
  const spot = found ?? outline.spots[0];
  if (!about || !spot) return undefined;
  const alike = findings.filter(
    (other) =>
      other.message !== finding.message &&
      other.check === finding.check &&
      other.about?.check === about.check &&
      spotAt(outline, other.start, other.end) === found,
  );
  const named = (typed: readonly string[]) => namedIn(model, typed).map((one) => inRounds(one, spot));
  return {
    text,
    finding,
    about,
    outline,
    model,
    spot,
    action: found?.statement.kind === 'action' ? found.statement : undefined,
    subject: named(about.things)[0],
    others: named(about.others),
    related: finding.related.flatMap((place) =>
      place.file === finding.file
        ? outline.spots.filter(
            ({ statement }) =>
              statement.kind === 'action' && statement.start === place.start && statement.end === place.end,
          )
        : [],
    ),
    alike: named(alike.flatMap((other) => other.about?.things ?? [])),
  };
}

/**
 * In a loop over positions a position is the loop's own: `#side` for `#left`. Where a thing is named with several, or as a
 * whole, the loop goes through all of them.
 */
function inRounds({ thing, typed }: Named, spot: Spot): Named {
  const written = [...typed.matchAll(/#([^\s,]+)/g)].map((match) => match[1]!);
  const positions = written.length > 0 || thing.positions.length === 1 ? written : thing.positions;
  if (positions.length === 0) return { thing, typed };
  for (const { statement } of [...spot.parents].reverse()) {
    if (statement.kind !== 'for each' || !statement.variable || !statement.over) continue;
    const { over, variable } = statement;
    const among = (position: string) =>
      over.kind === 'numbers'
        ? Number(position) >= over.from && Number(position) <= over.to
        : over.kind === 'positions'
          ? written.length > 0 || (over.ref.name.text === thing.name && over.ref.positions.length === 0)
          : over.names.some(({ text }) => text === position);
    if (positions.every(among)) return { thing, typed: `${thing.name} #${variable.text}` };
  }
  return { thing, typed };
}
