/**
 * Every word of the word list can be read where it belongs: a verb, tail, clause, header or statement that
 * is added to the lists without a rule that reads it fails here. Source: the description of the language.
 */
import { describe, expect, it } from 'vitest';
import { parse } from '../../../grammar/parser/parse.ts';
import type {
  ClauseName,
  Declaration,
  DeclarationKind,
  Header,
  Machine,
  Procedure,
  Statement,
  TailName,
} from '../../../grammar/syntax/tree.ts';
import {
  CLAUSE_SHAPES,
  CLAUSE_UNITS,
  CLAUSES_OF,
  type ClauseShape,
  DECLARATION_KINDS,
  SIGNALS,
} from '../../../grammar/tokens/clauses.ts';
import { VERBS } from '../../../grammar/tokens/verbs.ts';
import { actionOf, statementsOf } from '../../support/trees.ts';

describe('verbs', () => {
  const phrases = VERBS.flatMap((verb) =>
    [verb.verb, ...(verb.also ?? [])].map((phrase) => ({ phrase, verb })),
  );

  it.each(phrases)('$phrase', ({ phrase, verb }) => {
    const closing = verb.closing ? ` ${verb.closing}` : '';
    const line = verb.on.length > 0 ? `${phrase} cover${closing}` : phrase;
    const action = actionOf(verb.topic && verb.verb !== 'choose' ? `${phrase} gap of cover` : line);
    expect(action.verb).toBe(verb.verb);
    expect(action.word.text).toBe(phrase);
    if (verb.on.length > 0) expect(action.objects.map((ref) => ref.name.text)).toEqual(['cover']);
  });

  it.each(phrases.filter(({ phrase }) => phrase.includes(' ')))(
    '$phrase, parted by its object',
    ({ phrase, verb }) => {
      const [first, second] = phrase.split(' ');
      const action = actionOf(`${first} cover ${second}`);
      expect([action.verb, action.objects[0]!.name.text]).toEqual([verb.verb, 'cover']);
    },
  );

  it.each(VERBS.filter((verb) => verb.fresh))('$verb new and kit', ({ verb }) => {
    expect(actionOf(`${verb} new cover`)).toMatchObject({
      fresh: 'new',
      objects: [{ name: { text: 'cover' } }],
    });
    expect(actionOf(`${verb} kit seals`)).toMatchObject({
      fresh: 'kit',
      objects: [{ name: { text: 'seals' } }],
    });
  });

  it.each(VERBS.filter((verb) => verb.objectless))('$verb without an object', ({ verb }) => {
    expect(actionOf(`${verb} "What is done."`).text?.value).toBe('What is done.');
  });

  it.each(VERBS.filter((verb) => verb.outcomes))('$verb with outcomes', ({ verb }) => {
    const action = actionOf(`${verb} cover { tight { }  moves { remove cover } }`);
    expect(action.outcomes.map((outcome) => outcome.word?.text)).toEqual(['tight', 'moves']);
  });
});

const TAILS: Readonly<Record<TailName, readonly string[]>> = {
  with: ['with hoist', 'with 2 people', 'with 1.2 L pump-oil', 'with padlock, tag', 'with washer x2'],
  holding: ['holding cylinder with strap-wrench', 'holding cylinder'],
  while: ['while turning drum'],
  'by hand': ['by hand'],
  by: ['by table shims', 'by total'],
  from: ['from shim-table'],
  into: ['into oil-tray'],
  between: ['between impeller and plate'],
  of: ['of pump'],
  except: ['except seal, cap'],
  until: ['until "the hub binds"'],
  for: ['for 30 min', 'for "leaks"', 'for cure-time'],
  within: ['within 10 min'],
  'not over': ['not over 80 N·m', 'not over limit'],
  'not under': ['not under 5 bar'],
  'in order': [
    'in order across',
    'in order #1, #5, #3',
    'in reverse order',
    'in turn',
    'from the middle',
    'in order reverse',
  ],
  at: ['at #3', 'at #1..#4', 'at 80 N·m', 'at bleeder'],
  to: ['to 25 N·m', 'to "the mark"', 'to below thermostat', 'to new pump', 'to receiver'],
  stage: ['stage 2', 'to stage 2'],
  pass: ['pass 30 %'],
  times: ['2 times'],
  as: ['as gap'],
  expect: ['expect "a dry joint"'],
  picture: ['picture "head.jpg"', 'picture "head.jpg" "the six bolts"'],
  'and discard': ['and discard'],
};

describe('tails', () => {
  const cases = Object.entries(TAILS).flatMap(([tail, written]) => written.map((text) => ({ tail, text })));

  it.each(cases)('$text', ({ tail, text }) => {
    for (const written of [`inspect cover ${text}`, `inspect cover\n    ${text}`]) {
      const action = actionOf(written);
      expect(action.tails.map((one) => one.tail)).toEqual([tail]);
      expect(action.objects.map((ref) => ref.name.text)).toEqual(['cover']);
    }
  });

  it('stand in any order', () => {
    const texts = cases.map(({ text }) => text);
    const wrong: string[] = [];
    for (const first of texts) {
      for (const second of texts) {
        // What is held may be held with something: that `with` belongs to `holding`.
        if (first === 'holding cylinder' && /^with [a-z]/.test(second)) continue;
        const written = `inspect cover ${first} ${second}`;
        const { statements, problems } = statementsOf(written);
        const [action] = statements;
        const tails = action?.kind === 'action' ? action.tails.length : 0;
        if (tails !== 2 || problems.length > 0)
          wrong.push(`${written}: ${tails} tails; ${problems.join('; ')}`);
      }
    }
    expect(wrong).toEqual([]);
  });
});

const CLAUSES: Readonly<Record<ClauseShape, readonly string[]>> = {
  names: ['a', 'a, b and c', 'a #2, #3', 'washer x2'],
  'names and each': ['bolts', 'bolts 2 each', 'bolts #1..#4'],
  'names to names': ['a', 'a, b to c'],
  count: ['x6', 'x 6', '×6'],
  words: ['left, right'],
  nothing: [''],
  text: ['"tab outwards"'],
  texts: ['"lifter"', '"lifter", "jack"'],
  number: ['7', '7a'],
  condition: ['supply is single-phase', 'supply is not small or large', 'a is b and c is d', 'belt fitted'],
  hazards: [
    'moving',
    'moving, hot when turning, removing',
    'live can kill',
    'sharp can hurt when removing',
    'sharp when removing can hurt',
  ],
  quantity: [],
  'quantity and fluid': ['1.2 L pump-oil', 'pump-oil', '1.2 L'],
  designation: ['M8x1.25', '1/2-13 UNC', '#10-32', '1-8', '8.8', 'A2-70'],
  layout: [
    '2 rows of 3',
    'circle',
    'at 0 0, 50 0, 50 40 mm',
    'circle #1 "at the top"',
    'at -5.5 0, 5 0 mm #1 "left"',
  ],
  order: ['from the middle', 'across', 'in turn', 'reverse', '#1, #5, #3'],
  plan: ['{ 8 N·m; 16 N·m; 25 N·m }', '{ 60 N·m; 60° } to yield', '{ }'],
  state: ['open', 'on'],
};

describe('clauses', () => {
  const cases = (Object.keys(CLAUSE_SHAPES) as ClauseName[]).flatMap((clause) => {
    const shape = CLAUSE_SHAPES[clause];
    const unit = CLAUSE_UNITS[clause]?.split(' ')[0];
    const written =
      shape === 'quantity'
        ? [
            `5${unit ? ` ${unit}` : ''}`,
            `5..60${unit ? ` ${unit}` : ''}`,
            `at least 5${unit ? ` ${unit}` : ''}`,
            'limit',
          ]
        : CLAUSES[shape].filter(
            (text) => clause === 'thread' || shape !== 'designation' || !text.includes('1'),
          );
    return written.map((text) => ({ clause, text: clause === 'count' ? text : `${clause} ${text}`.trim() }));
  });

  it.each(cases)('$text', ({ clause, text }) => {
    const kind = DECLARATION_KINDS.find((one) => CLAUSES_OF[one].includes(clause))!;
    for (const written of [
      `${kind} thing "Thing" ${text} also called "it"`,
      `${kind} thing\n    ${text}\n    item 3`,
    ]) {
      const parsed = parse(`machine m {\n  ${written}\n}`);
      expect(parsed.problems).toEqual([]);
      const declaration = (parsed.tree.items[0] as Machine).items[0] as Declaration;
      expect(declaration.clauses.map((one) => one.clause)[0]).toBe(clause);
      expect(declaration.clauses).toHaveLength(2);
    }
  });

  it('can each stand in some declaration', () => {
    const placed = new Set(DECLARATION_KINDS.flatMap((kind) => CLAUSES_OF[kind]));
    expect((Object.keys(CLAUSE_SHAPES) as ClauseName[]).filter((clause) => !placed.has(clause))).toEqual([]);
  });

  it.each(DECLARATION_KINDS)('of a %s are accepted, all others reported', (kind: DeclarationKind) => {
    for (const clause of Object.keys(CLAUSE_SHAPES) as ClauseName[]) {
      const text = cases.find((one) => one.clause === clause)!.text;
      const { problems } = parse(`${kind} thing ${text}`);
      expect(problems.map((problem) => problem.check)).toEqual(
        CLAUSES_OF[kind].includes(clause) ? [] : ['clause-misplaced'],
      );
    }
  });
});

const STAGES: readonly [string, string][] = [
  ['8 N·m', 'torque'],
  ['60°', 'angle'],
  ['60 deg', 'angle'],
  ['1/4 turn', 'angle'],
  ['30 %', 'percent'],
  ['by hand', 'by hand'],
  ['loosen', 'loosen'],
  ['back off 1/4..3/8 turn', 'back off'],
  ['wait 10 min', 'wait'],
  ['again 25 N·m', 'again'],
  ['until "it binds"', 'until'],
  ['until "it binds" while turning hub', 'until'],
];

describe('stages of a plan', () => {
  it.each(STAGES)('%s', (written, kind) => {
    const parsed = parse(`fastener f plan { 8 N·m; ${written}; 9 N·m }`);
    expect(parsed.problems).toEqual([]);
    expect(parsed.tree.items[0]).toMatchObject({ clauses: [{ plan: { stages: [{}, { kind }, {}] } }] });
  });
});

const HEADERS: Readonly<Record<Header['header'], readonly string[]>> = {
  for: ['for tarn-t40', 'for tarn-t40, tarn-t60'],
  document: ['document "T40-02"', 'document "T40-02" issue 3 "2026-11-02"', 'document "T40-02" issue B'],
  people: ['people 2'],
  skill: ['skill "technician"'],
  'serial numbers': ['serial numbers "from 1200"'],
  time: ['time 1 h 30 min', 'time 20 min'],
  wear: ['wear eye-protection, gloves'],
  tools: ['tools torque-wrench, padlock x2'],
  supplies: ['supplies head-gasket x1, 1.2 L pump-oil and 3 g grease'],
  'starts with': ['starts with supply isolated', 'starts with cover, guard off and mains proved safe'],
  'ends with': ['ends with all of hub off except spindle, cap', 'ends with everything off, supply isolated'],
  'starts where': ['starts where hub-removal ends'],
  elsewhere: ['elsewhere "chapter 2"'],
  only: ['only supply is single-phase'],
  needs: ['needs "a clean bench"'],
  change: ['change "Torque corrected"'],
};

describe('headers', () => {
  const cases = Object.entries(HEADERS).flatMap(([header, written]) =>
    written.map((text) => ({ header, text })),
  );

  it.each(cases)('$text', ({ header, text }) => {
    const parsed = parse(`procedure p "P"\n  ${text}\n  people 1 { }`);
    expect(parsed.problems).toEqual([]);
    const procedure = parsed.tree.items[0] as Procedure;
    expect(procedure.headers.map((one) => one.header)).toEqual([header, 'people']);
    expect(procedure.body).toBeDefined();
  });
});

const STATEMENTS: Readonly<Record<Exclude<Statement['kind'], 'action' | 'broken'>, readonly string[]>> = {
  task: ['task strip "Strip" { }', 'task strip { remove cover }'],
  step: ['step "Take it off" { remove cover }', 'step { }'],
  notice: SIGNALS.flatMap((signal) => [
    `${signal} "Mind."`,
    `${signal} pressure, hot "Mind."`,
    `${signal} pressure\n "Mind."`,
  ]),
  when: ['when supply is single-phase { }', 'when supply is a or b { } otherwise { }'],
  if: ['if "it is scored" { remove cover } otherwise { }', 'if servo off { }', 'if servo not off { }'],
  choice: ['choice place: bench, in-place'],
  repeat: [
    'repeat until "no bubbles come" at most 5 times { } otherwise { stop "Call." }',
    'repeat until gap-set is yes { }',
  ],
  'for each': [
    'for each cylinder in 1..3 { }',
    'for each #n of bearing-caps { }',
    'for each side in left, right { }',
  ],
  reverse: ['reverse strip', 'reverse strip except seal, cap'],
  do: ['do hub-removal'],
  hold: ['hold "keep nitrogen flowing" { }'],
  allow: ['allow still-held because "It hangs on its hinge."'],
  stop: ['stop "Send it for repair."'],
  continues: ['continues'],
  value: ['value limit = 0.3 mm', 'value total "the sum" = (gap + 0.2 mm) / 2 - average of a, b'],
};

describe('statements', () => {
  const cases = Object.entries(STATEMENTS).flatMap(([kind, written]) =>
    written.map((text) => ({ kind, text })),
  );

  it.each(cases)('$text', ({ kind, text }) => {
    const { statements, problems } = statementsOf(`${text}\nremove cap`);
    expect(problems).toEqual([]);
    expect(statements.map((statement) => statement.kind)).toEqual([kind, 'action']);
  });
});

describe('items of a machine', () => {
  it.each([
    ['coupled a, b, c while drive-belt fitted', 'coupled'],
    ['coupled a, b', 'coupled'],
    ['value limit = 0.3 mm', 'value'],
    ['table shims { up to 0.3 mm: thin x2\n over 0.3 mm gives thick, thin x3 }', 'table'],
    ['table shims "Shims" { from 0.1..0.3 mm: 5 mm; exactly 1 mm: 2 mm + gap }', 'table'],
    ['variant supply: single-phase, three-phase', 'variant'],
    ['never size is small and supply is three-phase', 'never'],
    ['rule r "Why" { never turn flywheel }', 'rule'],
    ['rule r { always require cover fitted }', 'rule'],
    ['rule r { before open any connection require that connection capped }', 'rule'],
    ['rule r { after fit wheel require tighten nuts 2 times\n while cover off never run }', 'rule'],
  ])('%s, in a machine and at the top of a file', (written, kind) => {
    const inside = parse(`machine m {\n  ${written}\n  part last\n}`);
    expect(inside.problems).toEqual([]);
    expect((inside.tree.items[0] as Machine).items.map((item) => item.kind)).toEqual([kind, 'declaration']);
    const shared = parse(`${written}\npart last`);
    expect(shared.problems).toEqual([]);
    expect(shared.tree.items.map((item) => item.kind)).toEqual([kind, 'declaration']);
  });
});
