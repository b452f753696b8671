/**
 * Names that can come at a place: things of the kinds that fit there, those that the verb can act on in the
 * state first; values, tables, tasks, procedures, machines, states, hazards, checks.
 */
import type {
  Action,
  Clause,
  Header,
  Procedure,
  StateClaim,
  Statement,
  Tail,
} from '../../grammar/syntax/tree.ts';
import { CLAUSE_SHAPES, HAZARDS, STATES } from '../../grammar/tokens/clauses.ts';
import { verbNamed } from '../../grammar/tokens/verbs.ts';
import { ALL_CHECKS } from '../checks/all.ts';
import { ANYONES_TOOLS } from '../model/anyones-tools.ts';
import { MAY_NAME } from '../model/build.ts';
import type { Model, Thing } from '../model/model.ts';
import type { Local } from '../model/name-scope.ts';
import { actable } from './acts.ts';
import type { Proposal } from './complete.ts';
import { around, type Spot } from './complete-spot.ts';
import { orderWords } from './complete-words.ts';
import { factsOf } from './describe.ts';
import type { Role } from './occurrences.ts';
import type { Scene } from './view.ts';

const plain = (label: string, kind: Proposal['kind'], more: Partial<Proposal> = {}): Proposal => ({
  label,
  kind,
  rank: 2,
  ...more,
});

export function namesFor(spot: Spot, role: Role): Proposal[] {
  const scene = spot.view.sceneAt(spot.path, spot.name?.start ?? spot.word.start);
  switch (role) {
    case 'machine':
      return spot.view
        .visible(spot.file)
        .flatMap(({ machines }) => machines)
        .flatMap(({ name, title }) =>
          name ? [plain(name.text, 'name', title ? { detail: title.value } : {})] : [],
        );
    case 'procedure':
      return procedures(spot);
    case 'task':
      return tasks(spot, scene);
    case 'work':
      return [...tasks(spot, scene), ...procedures(spot)];
    case 'hazard':
      return HAZARDS.map((hazard) => plain(hazard, 'hazard'));
    case 'state':
      return states(spot, scene);
    case 'check':
      return checks();
    case 'axis':
      return axes(spot, scene);
    case 'axis value':
      return axisValues(spot, scene);
    case 'position':
      return positions(spot, scene);
    case 'value':
    case 'source':
      return scene ? [...values(spot, scene), ...(role === 'source' ? tables(scene.model) : [])] : [];
    case 'thing':
    case 'outcome':
      return scene ? things(spot, scene) : [];
    case 'doing':
      return ['turning', 'removing', 'fitting', 'opening', 'lifting'].map((one) => plain(one, 'word'));
    case 'function':
      return ['average of', 'sum of', 'larger of', 'smaller of'].map((one) => plain(one, 'word'));
    default:
      return [];
  }
}

function thingProposal(thing: Thing, model: Model, more: Partial<Proposal> = {}): Proposal {
  const count = thing.count && thing.count > 1 ? ` ×${thing.count}` : '';
  const facts = factsOf(thing, model);
  return {
    label: thing.name,
    kind: 'thing',
    detail: `${thing.title} · ${thing.type}${count}`,
    ...(facts.length > 0 ? { documentation: facts.join('  \n') } : {}),
    rank: 2,
    ...more,
  };
}

function ofKinds(model: Model, kinds: readonly string[] | undefined): Proposal[] {
  const fitting = kinds ? model.things.filter(({ type }) => kinds.includes(type)) : model.things;
  return fitting.map((thing) => thingProposal(thing, model));
}

function things(spot: Spot, scene: Scene): Proposal[] {
  const { model } = scene;
  const clause = spot.trail.find((node) => 'clause' in node) as Clause | undefined;
  if (clause) {
    const own = (around(spot, 'declaration') as { name?: { text: string } } | undefined)?.name?.text;
    const kinds =
      clause.clause === 'like'
        ? [String((around(spot, 'declaration') as { type?: string } | undefined)?.type)]
        : clause.clause === 'holds'
          ? ['fluid']
          : clause.clause === 'with'
            ? ['fastener', 'part', 'seal']
            : clause.clause === 'secured by'
              ? ['part', 'consumable', 'fastener', 'seal', 'connection']
              : CLAUSE_SHAPES[clause.clause] === 'quantity'
                ? []
                : MAY_NAME[clause.clause];
    const named = 'refs' in clause ? clause.refs.map(({ name }) => name.text) : [];
    const found = ofKinds(model, kinds).filter(({ label }) => label !== own && !named.includes(label));
    const axis = clause.clause === 'only' ? axes(spot, scene) : [];
    return [...axis, ...found, ...(clause.clause === 'only' ? [] : values(spot, scene, clause))];
  }
  const header = spot.trail.find((node) => 'header' in node) as Header | undefined;
  if (header) return inHeader(spot, scene, header);
  const statement = spot.trail.findLast((node) => node.kind !== undefined && STATEMENTS.has(node.kind)) as
    | Statement
    | undefined;
  const tail = spot.trail.find((node) => 'tail' in node) as Tail | undefined;
  if (statement?.kind === 'action' && tail) return inTail(spot, scene, statement, tail);
  if (statement?.kind === 'action') return objects(spot, scene, statement);
  if (statement?.kind === 'when' || statement?.kind === 'if' || statement?.kind === 'repeat')
    return [...axes(spot, scene), ...(statement.kind === 'when' ? [] : ofKinds(model, undefined))];
  if (statement?.kind === 'reverse')
    return ofKinds(model, ['part', 'fastener', 'seal', 'connection', 'control', 'isolator', 'system']);
  if (statement?.kind === 'for each')
    return ofKinds(model, undefined).filter(({ detail }) => detail?.includes('×'));
  return ofKinds(model, undefined);
}

const STATEMENTS: ReadonlySet<string> = new Set([
  'action',
  'when',
  'if',
  'repeat',
  'reverse',
  'for each',
  'coupled',
  'never',
  'rule',
]);

function inHeader(spot: Spot, scene: Scene, header: Header): Proposal[] {
  const { model } = scene;
  switch (header.header) {
    case 'tools':
      return ofKinds(model, ['tool']).filter(
        ({ label }) => !header.refs.some(({ name }) => name.text === label),
      );
    case 'supplies':
      return ofKinds(model, [
        'fluid',
        'consumable',
        'part',
        'seal',
        'fastener',
        'connection',
        'kit',
        'control',
        'isolator',
      ]);
    case 'only':
      return axes(spot, scene);
    case 'starts with':
    case 'ends with':
      return [
        plain('everything', 'word', { rank: 3 }),
        plain('all of', 'word', { rank: 3 }),
        ...ofKinds(model, [
          'part',
          'fastener',
          'seal',
          'connection',
          'control',
          'isolator',
          'system',
          'face',
          'tool',
        ]),
      ];
    default:
      return [];
  }
}

/** What the verb can act on in the state before the step; what something must be done to first comes last. */
function objects(spot: Spot, scene: Scene, action: Action): Proposal[] {
  const { model, procedure, file } = scene;
  const verb = verbNamed(action.verb);
  if (!procedure || !verb) return [];
  const here = action.objects.findIndex(({ start }) => start === spot.name?.start);
  const before = action.objects.slice(0, Math.max(here, 0));
  const begun = {
    ...action,
    objects: before,
    tails: action.tails.filter((tail) => tail.tail === 'by hand' || (tail.tail === 'to' && tail.fresh)),
  };
  const found = spot.view.at(procedure, file, model, action.start, (run) => actable(run, begun, file.path));
  const fresh =
    verb.fresh && action.fresh === undefined && before.length === 0
      ? [plain('new', 'word', { rank: 3 }), plain('kit', 'word', { rank: 3 })]
      : [];
  const topic = verb.topic ? locals(spot, scene, ['measured value', 'value']) : [];
  const loop = locals(spot, scene, ['loop variable']);
  return [
    ...found.map(({ thing, positions: open, blocked }) => {
      const proposal = thingProposal(thing, model, { rank: blocked ? 30 : 1 });
      const some = open ? ` ${open.map((position) => `#${position}`).join(', ')}` : '';
      const first = blocked
        ? ` · first: ${blocked.by || blocked.checks.join(', ').replaceAll('-', ' ')}`
        : '';
      return {
        ...proposal,
        label: `${thing.name}${some}`,
        detail: `${proposal.detail}${first}`,
        ...(blocked ? { blocked: blocked.checks } : {}),
      };
    }),
    ...fresh,
    ...topic,
    ...loop,
  ];
}

function inTail(spot: Spot, scene: Scene, action: Action, tail: Tail): Proposal[] {
  const { model } = scene;
  const anyones = [...ANYONES_TOOLS].map((label) =>
    plain(label, 'thing', { rank: 6, detail: 'in every workshop' }),
  );
  switch (tail.tail) {
    case 'with': {
      if (tail.quantity) return ofKinds(model, ['fluid', 'consumable']);
      const kinds = ['coat', 'lubricate', 'clean'].includes(action.verb)
        ? ['consumable', 'fluid', 'tool']
        : ['tool', 'consumable', 'part', 'fluid', 'control', 'connection'];
      return [...listedFirst(scene, ofKinds(model, kinds)), ...anyones];
    }
    case 'holding': {
      const held = tail.with.some(({ start }) => start === spot.name?.start);
      return held
        ? [...ofKinds(model, ['tool']), ...anyones]
        : ofKinds(model, ['part', 'fastener', 'connection']);
    }
    case 'while':
      return ofKinds(model, ['part']);
    case 'into':
      return [...ofKinds(model, ['tool', 'part']), ...anyones];
    case 'to':
      return [
        ...values(spot, scene),
        ...ofKinds(model, ['part', 'tool', 'face']),
        plain('new', 'word'),
        plain('below', 'word'),
        ...(action.verb === 'tighten' ? [plain('stage', 'word')] : []),
      ];
    case 'at':
      return [
        ...values(spot, scene),
        ...ofKinds(model, ['control', 'part', 'connection', 'fastener', 'isolator']),
      ];
    case 'in order':
      return orderWords();
    case 'between':
    case 'of':
      return ofKinds(model, [
        'part',
        'seal',
        'fastener',
        'connection',
        'control',
        'isolator',
        'face',
        'system',
      ]);
    case 'except':
      return ofKinds(model, verbNamed(action.verb)?.on);
    case 'by':
    case 'from':
      return [...values(spot, scene), ...tables(model)];
    default:
      return values(spot, scene);
  }
}

/** Tools that the head of the procedure lists come before the others. */
function listedFirst({ procedure }: Scene, proposals: Proposal[]): Proposal[] {
  const listed = new Set(
    procedure?.headers.flatMap((header) =>
      header.header === 'tools' ? header.refs.map(({ name }) => name.text) : [],
    ) ?? [],
  );
  return proposals.map((one) => (listed.has(one.label) ? { ...one, rank: 1 } : one));
}

function locals(spot: Spot, { procedure, file, model }: Scene, what: readonly Local['what'][]): Proposal[] {
  if (!procedure) return [];
  const at = spot.name?.start ?? spot.word.start;
  return spot.view
    .namesOf(procedure, file, model)
    .locals.filter((local) => what.includes(local.what) && (local.what === 'task' || local.at.end <= at))
    .filter((local) => local.what !== 'loop variable' || loopAround(spot, local))
    .map((local) => plain(local.name, 'value', { detail: local.what }));
}

function loopAround({ trail }: Spot, local: Local): boolean {
  return trail.some(
    (node) =>
      node.kind === 'for each' &&
      (node as { variable?: { start: number } }).variable?.start === local.at.start,
  );
}

function values(spot: Spot, scene: Scene, clause?: Clause): Proposal[] {
  if (clause && !('quantity' in clause) && CLAUSE_SHAPES[clause.clause] !== 'quantity') return [];
  const declared = [...scene.model.values].map(([label, { title }]) =>
    plain(label, 'value', { detail: title }),
  );
  return [...declared, ...locals(spot, scene, ['measured value', 'value', 'loop variable'])];
}

function tables(model: Model): Proposal[] {
  return [...model.tables].map(([label, { title }]) =>
    plain(label, 'value', { detail: title?.value ?? 'table' }),
  );
}

function tasks(spot: Spot, scene: Scene | undefined): Proposal[] {
  return scene ? locals(spot, scene, ['task']).map((one): Proposal => ({ ...one, kind: 'name' })) : [];
}

function procedures(spot: Spot): Proposal[] {
  const own = around(spot, 'procedure') as Procedure | undefined;
  return spot.view
    .visible(spot.file)
    .flatMap((file) => file.procedures)
    .filter((procedure) => procedure !== own && procedure.name)
    .map(({ name, title }) => plain(name!.text, 'name', { detail: title?.value ?? 'procedure' }));
}

function axes(spot: Spot, scene: Scene | undefined): Proposal[] {
  if (!scene) return [];
  const variants = [...scene.model.variants].map(([label, { values: all }]) =>
    plain(label, 'name', { detail: `variant: ${all.join(', ')}`, rank: 1 }),
  );
  return [...variants, ...locals(spot, scene, ['choice', 'measured value'])];
}

function axisValues(spot: Spot, scene: Scene | undefined): Proposal[] {
  const axis = spot.name?.of;
  if (!scene || axis === undefined) return [];
  const local = scene.procedure
    ? spot.view.namesOf(scene.procedure, scene.file, scene.model).locals.find(({ name }) => name === axis)
    : undefined;
  const all = local?.values ?? scene.model.variants.get(axis)?.values ?? [];
  return all.map((value) => plain(value, 'name', { detail: axis }));
}

function positions(spot: Spot, scene: Scene | undefined): Proposal[] {
  const of = spot.name?.of ?? spot.positionOf;
  const thing = of === undefined ? undefined : scene?.model.byName.get(of);
  const all = thing?.positions.filter((position) => position !== '') ?? [];
  const loop = scene ? locals(spot, scene, ['loop variable']) : [];
  return [
    ...loop,
    ...all.map((position, index) =>
      plain(position, 'name', { detail: thing!.title, rank: 2 + index / 1000 }),
    ),
  ];
}

function states(spot: Spot, scene: Scene | undefined): Proposal[] {
  const claim = spot.trail.findLast((node) => 'scope' in node && 'refs' in node) as StateClaim | undefined;
  const condition = spot.trail.findLast((node) => node.kind === 'state') as
    | { ref?: { name: { text: string } } }
    | undefined;
  const names = claim
    ? claim.refs.map(({ name }) => name.text)
    : condition?.ref
      ? [condition.ref.name.text]
      : [];
  const kinds = names.flatMap((name) => scene?.model.byName.get(name)?.type ?? []);
  const fitting = Object.keys(STATES).filter((state) => kinds.every((kind) => STATES[state]!.includes(kind)));
  const axis = names.some((name) => scene?.model.variants.has(name));
  const asked = condition
    ? [
        plain('is', 'word', { rank: axis ? 0 : 6 }),
        plain('is not', 'word', { rank: axis ? 0 : 6 }),
        plain('not', 'word', { rank: 6 }),
      ]
    : [];
  return axis
    ? asked
    : [...fitting.map((state) => plain(state, 'state', { detail: STATES[state]!.join(', ') })), ...asked];
}

function checks(): Proposal[] {
  return ALL_CHECKS.map(({ name, title, severity }) =>
    plain(name, 'check', { detail: severity, documentation: title }),
  );
}
