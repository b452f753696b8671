/**
 * Words of the language that can come at a place, each with what it means and, where more must follow, a form
 * to fill in. From the word list and the tables of the reference; names are in complete-names.ts.
 */
import type { Action, Declaration, Procedure, Statement, Tail } from '../../grammar/syntax/tree.ts';
import { CLAUSE_SHAPES, CLAUSES_OF, DECLARATION_KINDS, SIGNALS } from '../../grammar/tokens/clauses.ts';
import { VERBS, type Verb, verbNamed } from '../../grammar/tokens/verbs.ts';
import { DEMANDS, HEADER_WORDS, SCOPES } from '../../grammar/tokens/words.ts';
import type { Proposal } from './complete.ts';
import { justBefore, type Spot } from './complete-spot.ts';
import { CLAUSE_HELP, HEADER_HELP, TAIL_HELP, VERB_HELP, type WordHelp } from './word-help.ts';

const word = (label: string, more: Partial<Proposal> = {}): Proposal => ({
  label,
  kind: 'word',
  rank: 5,
  ...more,
});

const TITLE = '"‹title›"';

export function fileWords(): Proposal[] {
  return [
    word('use', { snippet: 'use "‹file.dowel›"', detail: 'what another file declares', rank: 1 }),
    word('machine', {
      snippet: `machine ‹name› ${TITLE} {\n  ‹›\n}`,
      kind: 'snippet',
      detail: 'what a machine is made of',
      rank: 2,
    }),
    word('procedure', {
      snippet: `procedure ‹name› ${TITLE}\n  for ‹machine›\n{\n  ‹›\n}`,
      kind: 'snippet',
      detail: 'a job, step by step',
      rank: 2,
    }),
  ];
}

const KIND_SAYS: Readonly<Record<string, string>> = {
  part: 'anything that comes off and goes back',
  fastener: 'bolts, nuts, screws, studs or clamps, as one group',
  seal: 'a gasket, a ring, a line of sealant',
  connection: 'a plug, a hose, a cable, a pipe union',
  control: 'a valve or a switch',
  isolator: 'a breaker, disconnector or valve that can be locked',
  face: 'a surface that is cleaned, measured or coated',
  system: 'fluid, pressure, electricity, a spring or a raised weight',
  fluid: 'what a system is filled with',
  consumable: 'sealant, grease, cleaner, wire',
  tool: 'a tool, a fixture, a measuring instrument',
  kit: 'a set of new parts',
};

export function machineWords(): Proposal[] {
  return [
    ...DECLARATION_KINDS.map((kind) =>
      word(kind, { snippet: `${kind} ‹name› ${TITLE}`, detail: KIND_SAYS[kind]! }),
    ),
    word('coupled', { snippet: 'coupled ‹part›, ‹part›', detail: 'parts that turn together' }),
    word('value', { snippet: `value ‹name› ${TITLE} = ‹quantity›`, detail: 'a number with a name' }),
    word('table', { snippet: `table ‹name› ${TITLE} {\n  ‹›\n}`, detail: 'numbers to look up' }),
    word('variant', {
      snippet: 'variant ‹name›: ‹one›, ‹other›',
      detail: 'how one machine differs from the next',
    }),
    word('never', { snippet: 'never ‹condition›', detail: 'a combination that is not built' }),
    word('rule', { snippet: `rule ‹name› ${TITLE} {\n  ‹›\n}`, detail: 'a rule of the house' }),
  ];
}

const FORMS: Readonly<Record<string, string>> = {
  count: 'x‹2›',
  plan: 'plan { ‹stages› }',
  hazard: 'hazard ‹hazard›',
};

/** Clauses that the kind may have and that are not there yet. */
export function clauseWords(spot: Spot, { type, clauses }: Declaration): Proposal[] {
  // What is typed at the place is not there yet.
  const there = new Set(clauses.filter(({ start }) => start !== spot.word.start).map(({ clause }) => clause));
  const last = spot.before[spot.before.length - 1];
  const more: Proposal[] = [];
  const ending = justBefore(spot, clauses);
  if (ending?.clause === 'held by') more.push(word('each', { snippet: '‹2› each', rank: 2 }));
  if (ending?.clause === 'plan') more.push(word('to yield', { rank: 2, detail: 'the bolt is stretched' }));
  if ((ending?.clause === 'clamps' || ending?.clause === 'joins') && ending.to.length === 0)
    more.push(word('to', { rank: 1 }));
  if (ending?.clause === 'hazard') {
    for (const harm of ['will kill', 'can kill', 'can hurt', 'can damage'])
      if (!ending.harm) more.push(word(harm, { rank: 2 }));
    if (ending.when.length === 0) more.push(word('when', { rank: 2 }));
  }
  if (last && spot.file.text.slice(last.start, last.end) === 'order')
    return ['from the middle', 'across', 'in turn', 'reverse'].map((one) => word(one, { rank: 1 }));
  if (last && spot.file.text.slice(last.start, last.end) === 'layout')
    return [
      word('rows of', { snippet: '‹2› rows of ‹3›', rank: 1 }),
      word('circle', { rank: 1 }),
      word('at', { snippet: 'at ‹0 0, 40 0› mm', rank: 1 }),
    ];
  const free = CLAUSES_OF[type].filter((clause) => !there.has(clause) || clause === 'hazard');
  return [
    ...more,
    ...free.map((clause) => {
      const help = CLAUSE_HELP[clause];
      const label = clause === 'count' ? 'x' : clause;
      const flag = CLAUSE_SHAPES[clause] === 'nothing';
      const text = CLAUSE_SHAPES[clause] === 'text' ? `${clause} "‹…›"` : flag ? undefined : `${clause} `;
      const snippet = FORMS[clause] ?? text;
      return word(label, {
        detail: help.form,
        documentation: help.says,
        ...(snippet ? { snippet } : {}),
        rank: 4,
      });
    }),
  ];
}

export function headerWords(spot: Spot, procedure: Procedure): Proposal[] {
  const there = new Set<string>(
    procedure.headers.filter(({ start }) => start !== spot.word.start).map(({ header }) => header),
  );
  const last = spot.before[spot.before.length - 1];
  const ending = justBefore(spot, procedure.headers);
  if (ending?.header === 'document' && ending.issue === undefined)
    return [word('issue', { snippet: 'issue ‹1› "‹date›"', rank: 1 })];
  if (ending?.header === 'starts where') return [word('ends', { rank: 1 })];
  // Behind the name a title is due.
  if (last && !procedure.title && last.end === procedure.name?.end) return [];
  const words = HEADER_WORDS.filter((header) => HEADER_HELP[header] && !there.has(header));
  return words.map((header) => {
    const { form, says } = HEADER_HELP[header]!;
    const text = /TEXT$/.test(form) ? `${header} "‹…›"` : `${header} `;
    return word(header, { detail: form, documentation: says, snippet: text, rank: header === 'for' ? 1 : 4 });
  });
}

/** Verbs that some thing of the machine can take, and the other statements. */
export function statementWords(spot: Spot, procedure: Procedure, outcomesOf?: Action): Proposal[] {
  const { model } = spot.view.machineOf(procedure, spot.file) ?? {};
  const kinds = new Set<string>(model?.things.map(({ type }) => type) ?? []);
  const can = ({ on, objectless }: Verb) => !model || objectless || on.some((kind) => kinds.has(kind));
  if (outcomesOf) {
    const free = [
      word('otherwise', { snippet: 'otherwise {\n  ‹›\n}', rank: 2 }),
      ...(outcomesOf.verb === 'measure'
        ? ['below', 'up to', 'from', 'over', 'exactly'].map((one) =>
            word(one, { snippet: `${one} ‹limit› { ‹› }`, rank: 1 }),
          )
        : []),
    ];
    return free;
  }
  const previous = justBefore<Statement>(spot, statementsAround(spot, procedure));
  const other =
    previous && 'otherwise' in previous === false && ['when', 'if', 'repeat'].includes(previous.kind)
      ? [word('otherwise', { snippet: 'otherwise {\n  ‹›\n}', rank: 0 })]
      : [];
  const tasks = spot.file.text.includes('task ');
  const axes = (model?.variants.size ?? 0) > 0 || spot.file.text.includes('choice ');
  return [
    ...other,
    ...VERBS.filter(can).map(verbProposal),
    ...freshVerbs(kinds),
    word('task', { snippet: `task ‹name› ${TITLE} {\n  ‹›\n}`, detail: 'steps with a name' }),
    word('step', { snippet: 'step "‹title›" {\n  ‹›\n}', detail: 'actions that belong together' }),
    ...SIGNALS.map((signal) =>
      signal === 'note'
        ? word(signal, { snippet: 'note "‹…›"', detail: 'informs' })
        : word(signal, {
            snippet: `${signal} ‹hazard› "‹What can happen, and how to avoid it.›"`,
            detail: 'before the step it guards',
          }),
    ),
    ...(axes
      ? [
          word('when', {
            snippet: 'when ‹variant› is ‹value› {\n  ‹›\n}',
            detail: 'in a variant or choice',
          }),
        ]
      : []),
    word('if', {
      snippet: 'if "‹what is seen›" {\n  ‹›\n}',
      detail: 'what the technician sees, or a state',
    }),
    word('choice', {
      snippet: 'choice ‹name›: ‹one›, ‹other›',
      detail: "the technician's own choice",
    }),
    word('repeat', {
      snippet: 'repeat until "‹it is right›" at most ‹3› times {\n  ‹›\n} otherwise {\n  stop "‹…›"\n}',
      detail: 'again, until it is right',
    }),
    word('for each', {
      snippet: 'for each #‹n› of ‹group› {\n  ‹›\n}',
      detail: 'each position, number or name',
    }),
    ...(tasks ? [word('reverse', { snippet: 'reverse ‹task›', detail: 'the way back of a task' })] : []),
    word('do', { snippet: 'do ‹procedure›', detail: 'another procedure, or a task' }),
    word('hold', { snippet: 'hold "‹…›" {\n  ‹›\n}', detail: 'a condition that lasts for a block' }),
    word('allow', {
      snippet: 'allow ‹check› because "‹reason›"',
      detail: 'waives a finding of the next step',
    }),
    word('stop', { snippet: 'stop "‹…›"', detail: 'the work ends here' }),
    word('continues', { detail: 'the text is not finished' }),
    word('value', { snippet: 'value ‹name› = ‹quantity›', detail: 'a number with a name' }),
  ];
}

function statementsAround(spot: Spot, procedure: Procedure): readonly Statement[] {
  const block = spot.trail.findLast((node) => 'statements' in node) as
    | { statements: Statement[] }
    | undefined;
  return block?.statements ?? procedure.body?.statements ?? [];
}

/** How a verb is proposed, with what it asks and does. */
export function verbProposal(verb: Verb): Proposal {
  const help = VERB_HELP[verb.verb];
  return {
    label: verb.verb,
    kind: 'verb',
    rank: 3,
    ...(help ? { detail: help.does } : {}),
    documentation: verbWords(verb),
    ...(verb.closing ? { snippet: `${verb.verb} ‹system› ${verb.closing}` } : {}),
  };
}

/** Markdown: what a verb asks, does, acts on, and what undoes it. */
export function verbWords(verb: Verb): string {
  const help = VERB_HELP[verb.verb];
  const rows = [
    help?.asks ? `It asks: ${help.asks}.` : '',
    help ? `It does: ${help.does}.` : '',
    verb.on.length > 0 ? `Acts on: ${verb.on.join(', ')}.` : '',
    verb.undone ? `Undone by: \`${verb.undone}\`.` : '',
    verb.also ? `Also written: ${verb.also.map((one) => `\`${one}\``).join(', ')}.` : '',
  ];
  return rows.filter((row) => row !== '').join('  \n');
}

function freshVerbs(kinds: ReadonlySet<string>): Proposal[] {
  return ['fit new', ...(kinds.has('kit') ? ['fit kit'] : [])].map((label) => ({
    label,
    kind: 'verb',
    rank: 3,
    detail: VERB_HELP[label]!.does,
    documentation: `It asks: ${VERB_HELP[label]!.asks}.`,
  }));
}

const ANYWHERE: readonly Tail['tail'][] = [
  'with',
  'expect',
  'picture',
  'by hand',
  'for',
  'until',
  'while',
  'holding',
  'within',
  'at',
  'not over',
  'not under',
];
const FITTING: readonly Tail['tail'][] = ['by hand', 'in order', 'with', 'at'];
/** Tails that a verb is usually followed by; others come after them. */
const TAILS_OF: Readonly<Record<string, readonly Tail['tail'][]>> = {
  remove: ['and discard', 'with'],
  unbolt: ['and discard', 'with'],
  disconnect: ['and discard'],
  refit: FITTING,
  fit: FITTING,
  loosen: ['in order', 'with', 'holding'],
  tighten: ['in order', 'stage', 'pass', 'to', 'until', 'with', 'holding'],
  'back off': ['with', 'holding'],
  check: ['at', 'with', 'for', 'as'],
  measure: ['of', 'between', 'with', 'as'],
  record: ['of', 'as'],
  choose: ['from', 'by'],
  inspect: ['for', 'with', 'as'],
  send: ['for', 'to'],
  drain: ['into', 'to'],
  recover: ['with', 'into'],
  evacuate: ['to', 'for', 'with'],
  pressurise: ['to', 'with'],
  inflate: ['to', 'with'],
  'top up': ['to', 'with'],
  bleed: ['at', 'until', 'with'],
  move: ['to', 'with'],
  adjust: ['to', 'with'],
  clean: ['with', 'except'],
  coat: ['with', 'except'],
  lubricate: ['with'],
  turn: ['times', 'by hand', 'while', 'holding'],
};

/** What can follow on the line of a statement. */
export function afterAction(spot: Spot, statement: Statement): Proposal[] {
  const last = spot.before[spot.before.length - 1];
  const typed = last ? spot.file.text.slice(last.start, last.end) : '';
  switch (statement.kind) {
    case 'action':
      return tailWords(statement, typed);
    case 'repeat':
      if (!statement.until) return [word('until', { snippet: 'until "‹…›"' })];
      return statement.atMost === undefined ? [word('at most', { snippet: 'at most ‹3› times' })] : [];
    case 'for each':
      return statement.over ? [] : [word('in'), word('of')];
    case 'reverse':
      return statement.task && statement.except.length === 0 ? [word('except')] : [];
    case 'allow':
      return statement.check && !statement.reason ? [word('because', { snippet: 'because "‹reason›"' })] : [];
    case 'when':
    case 'if':
      return statement.body
        ? [word('otherwise', { snippet: 'otherwise {\n  ‹›\n}' })]
        : [word('and'), word('is'), word('is not')];
    default:
      return [];
  }
}

function tailWords(action: Action, typed: string): Proposal[] {
  const verb = verbNamed(action.verb);
  if (typed === 'order') return orderWords();
  if (verb?.closing && typed !== verb.closing && action.objects.length > 0 && action.tails.length === 0)
    return [word(verb.closing, { rank: 0 })];
  const there = new Set(action.tails.map(({ tail }) => tail));
  const own = TAILS_OF[action.verb] ?? [];
  const tails = [...new Set([...own, ...ANYWHERE])].filter((tail) => tail === 'with' || !there.has(tail));
  const more = action.objects.length > 0 && action.tails.length === 0 ? [word('and', { rank: 2 })] : [];
  return [...tails.map((tail) => tailProposal(tail, own.includes(tail) ? 1 : 4)), ...more];
}

function tailProposal(tail: Tail['tail'], rank: number): Proposal {
  const help: WordHelp | undefined = TAIL_HELP[tail];
  const text: Partial<Record<Tail['tail'], string>> = {
    until: 'until "‹…›"',
    expect: 'expect "‹…›"',
    picture: 'picture "‹file›" "‹what it shows›"',
    stage: 'stage ‹1›',
    pass: 'pass ‹50 %›',
    times: '‹2› times',
  };
  const snippet = text[tail];
  return word(tail, {
    rank,
    ...(help ? { detail: help.form, documentation: help.says } : {}),
    ...(snippet ? { snippet } : {}),
  });
}

export function orderWords(): Proposal[] {
  return ['from the middle', 'across', 'in turn'].map((one) => word(one, { rank: 1 }));
}

/** Inside the braces of a plan. */
export function planWords(spot: Spot): Proposal[] {
  const last = spot.before[spot.before.length - 1];
  const typed = last ? spot.file.text.slice(last.start, last.end) : '';
  if (typed !== '{' && typed !== ';')
    return last?.type === 'text' ? [word('while', { snippet: 'while turning ‹part›' })] : [];
  return [
    word('by hand', { rank: 1 }),
    word('loosen', { rank: 2 }),
    word('back off', { snippet: 'back off ‹1/6 turn›', rank: 2 }),
    word('again', { snippet: 'again ‹25 N·m›', rank: 2 }),
    word('wait', { snippet: 'wait ‹10 min›', rank: 2 }),
    word('until', { snippet: 'until "‹it binds›"', rank: 2 }),
  ];
}

/** Inside the braces of a rule. */
export function ruleWords(spot: Spot): Proposal[] {
  const words = spot.begins ? [...SCOPES, ...DEMANDS] : [...DEMANDS, 'any', 'that', 'with', 'of', 'times'];
  return [...words.map((one) => word(one, { rank: 1 })), ...VERBS.map(verbProposal)];
}

/** Inside the braces of a table. */
export function tableWords(spot: Spot): Proposal[] {
  if (!spot.begins) return [word('gives')];
  return ['below', 'up to', 'from', 'over', 'exactly'].map((one) => word(one, { rank: 1 }));
}
