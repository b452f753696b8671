/**
 * Changes that many mends are made of: steps written at a place, moved to it, or left out. Where nothing else fits, a step is
 * tried at the places near it. Nothing here is known to be right (see mend-search.ts).
 */
import type { Edit } from '../../grammar/format/format.ts';
import type { Changes, Context } from './mend-context.ts';
import { alone, cut, moved, overlap, put, without } from './mend-edits.ts';
import { after, before, beforeNotices, type Site, type Spot } from './mend-outline.ts';
import { backOf } from './mend-sites.ts';
import { type Named, type NewStep, type NewSteps, sameVerbs } from './mend-steps.ts';

/** Every way at every place, the first way first. */
export function* insertAtAll(
  context: Context,
  ways: readonly NewSteps[],
  sites: readonly Site[],
  orMove = true,
): Changes {
  for (const [index, steps] of ways.entries()) {
    // The less usual ways only at the likeliest places.
    for (const site of index === 0 ? sites : sites.slice(0, 4))
      yield* orMove ? bring(context, steps, site) : insertAt(context, steps, site);
  }
}

/** The steps for all of these things before the present one, then those for each of them. */
export function* allFirst(
  context: Context,
  all: readonly Named[],
  ways: (one: Named) => NewSteps[],
): Changes {
  if (all.length > 1) {
    const steps = all.flatMap((one) => ways(one)[0] ?? []);
    yield* insertAt(context, steps, beforeNotices(context.spot));
  }
  for (const one of all) yield* first(context, one, ways);
}

/** The steps before the present one. */
export function* first(context: Context, one: Named | undefined, ways: (one: Named) => NewSteps[]): Changes {
  if (!one) return;
  for (const steps of ways(one)) yield* bring(context, steps, beforeNotices(context.spot));
}

/** The steps at places further up. */
export function* earlier(context: Context, all: readonly Named[], ways: (one: Named) => NewSteps[]): Changes {
  for (const site of earlierSites(context))
    for (const one of all) for (const steps of ways(one).slice(0, 2)) yield* insertAt(context, steps, site);
}

export function earlierSites({ outline, spot }: Context): Site[] {
  return outline.spots
    .slice(0, spot.order)
    .filter(({ statement }) => statement.kind === 'action')
    .reverse()
    .slice(0, 10)
    .flatMap((one) => {
      const site = beforeNotices(one);
      // A notice may be about the step that is missing behind it.
      return site.index === one.index ? [site] : [before(one), site];
    });
}

/** Moves a step that does the same to here, or writes the steps here. */
export function* bring(context: Context, steps: readonly NewStep[], site: Site): Changes {
  const only = steps[0];
  if (only && steps.length === 1)
    for (const spot of sameElsewhere(context, only)) yield* move(context, spot, site, only.name);
  yield* insertAt(context, steps, site);
}

/** Steps nearby that do the same to the same thing, nearest first. */
function sameElsewhere({ outline, spot }: Context, step: NewStep): Spot[] {
  const verbs = sameVerbs(step.verb);
  return outline.spots
    .filter(
      ({ statement }) =>
        statement.kind === 'action' &&
        statement !== spot.statement &&
        verbs.includes(statement.verb) &&
        statement.objects.some((ref) => ref.name.text === step.name),
    )
    .sort((a, b) => Math.abs(a.order - spot.order) - Math.abs(b.order - spot.order))
    .slice(0, 2);
}

/** New lines at a place; in the case that shows the finding, and only there. */
export function* insertAt({ text, about }: Context, steps: readonly NewStep[], site: Site): Changes {
  if (steps.length === 0 || afterStop(site)) return;
  const lines = steps.map(({ line }) => line);
  yield [put(text, site, lines)];
  if (about.when) yield [put(text, site, [`when ${about.when} {`, ...lines, '}'])];
}

/** Behind `stop` nothing is done any more: a step there would be as good as deleted. */
function afterStop({ block, index }: Site): boolean {
  return block.statements.slice(0, index).some(({ kind }) => kind === 'stop');
}

/** A step moved; where it is about several things also for one of them alone. */
export function* move(
  { text, about, finding, outline }: Context,
  spot: Spot,
  site: Site,
  name?: string,
): Changes {
  // Out of a branch or a loop only where that is what is wrong: elsewhere the author meant it to be there.
  const { conditional } = outline;
  const stays = conditional.get(spot.block) === conditional.get(site.block);
  if ((!stays && about.check === finding.check) || afterStop(site)) return;
  const edits = moved(text, spot, site);
  if (edits) yield edits;
  const guarded = moved(text, spot, site, true);
  if (guarded) yield guarded;
  const { statement } = spot;
  if (name === undefined || statement.kind !== 'action' || statement.objects.length < 2) return;
  yield* together(without(text, spot, statement, name), [put(text, site, [alone(text, statement, name)])]);
}

/** The present step behind the one that puts a thing back, where that comes later. */
export function* afterBack(context: Context, name: string): Changes {
  const back = backOf(context.outline, name, context.spot.order);
  if (!back) return;
  yield* move(context, context.spot, after(back.first), context.subject?.thing.name);
  if (back.last !== back.first)
    yield* move(context, context.spot, after(back.last), context.subject?.thing.name);
  yield* move(context, back.first, beforeNotices(context.spot), name);
}

/** The present step before or after each step of its story, and the other way round. */
export function* aroundStory(context: Context): Changes {
  const { spot, action } = context;
  if (!action) return;
  for (const other of [...context.related].reverse()) {
    yield* move(context, spot, before(other), context.subject?.thing.name);
    yield* move(context, spot, after(other), context.subject?.thing.name);
    yield* move(context, other, after(spot));
    yield* move(context, other, before(spot));
  }
}

/** How far a step is moved, in statements. */
const WINDOW = 12;

/** The nearest places up and down. */
export function* nearby(context: Context, spot: Spot): Changes {
  if (spot.statement.kind !== 'action') return;
  const { spots } = context.outline;
  for (let distance = 1; distance <= WINDOW; distance++) {
    const up = spots[spot.order - distance];
    const down = spots[spot.order + distance];
    if (up) yield* move(context, spot, before(up));
    if (down) yield* move(context, spot, after(down));
  }
}

export function* dropOne({ text, spot, action, subject }: Context): Changes {
  if (!action) return;
  if (subject) yield without(text, spot, action, subject.thing.name);
  yield [cut(text, spot)];
}

export function* together(a: readonly Edit[], b: readonly Edit[]): Changes {
  const edits = [...a, ...b];
  if (!overlap(edits)) yield edits;
}
