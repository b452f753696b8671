/**
 * What the sentences of the checks share, on facts that are made up: words for one and for several, what facts leave out,
 * and the case that is named. Outside source: English grammar (common practice, no source); written by hand.
 */
import { describe, expect, test } from 'vitest';
import { checkNamed } from '../../../language-server/checks/all.ts';
import { checkProject, type House } from '../../../language-server/checks/check-project.ts';
import * as says from '../../../language-server/checks/speak.ts';
import { type CaseSet, Cases, EVERY, NONE } from '../../../language-server/execution/cases.ts';
import { buildModel } from '../../../language-server/model/build.ts';
import type { Fact, Mentioned, Story } from '../../../language-server/model/facts.ts';
import { Loader } from '../../../language-server/model/names.ts';
import { memoryHost } from '../../../language-server/project/project.ts';

const TEXT = `machine rig "rig" {
  part bed "bed" fixed
  part lid "lid" on bed
  part guards "guards" on bed
  part caps "caps" positions left, mid, right on bed
  fastener bolts "bolts" x4 clamps lid to bed
  fastener screw "screw" x1 clamps guards to bed
  connection hose "hose" joins lid to bed
  connection leads "leads" x2 joins lid to bed
  control tap "tap"
  isolator switch "switch"
  tool pin "pin"
  system air "air" pressure 3 bar
  seal ring "ring" on bed
}
`;

const loader = new Loader(memoryHost({ 'rig.dowel': TEXT }));
const file = loader.load('rig.dowel')!;
const { model } = buildModel(file.machines[0], file, loader.visible(file));
const at = { file: 'rig.dowel', start: 3, end: 7 };

/** `lid`; `bolts 1 2` are positions #1 and #2. */
function the(words: string): Mentioned {
  const [name, ...numbers] = words.split(' ');
  const thing = model.byName.get(name!)!;
  const items = numbers.map((number) => thing.first + Number(number) - 1);
  return numbers.length > 0 ? { thing, items } : { thing };
}

function fact(subject: string | undefined, others?: readonly string[], more: Partial<Fact> = {}): Fact {
  return {
    check: 'left-off',
    at,
    ...(subject === undefined ? {} : { subject: the(subject) }),
    ...(others ? { others: others.map(the) } : {}),
    ...more,
  };
}

const did = (...steps: readonly (readonly [Story, string])[]): Partial<Fact> => ({
  story: steps.map(([what, name]) => ({ at, what, thing: the(name).thing })),
});

describe('what is spoken of', () => {
  test.each([
    ['lid', 'the lid', 'lid', 'is', 'it'],
    ['guards', 'the guards', 'guards', 'are', 'them'],
    ['bolts', 'the bolts', 'bolts', 'are', 'them'],
    ['bolts 1 2 3 4', 'the bolts', 'bolts', 'are', 'them'],
    ['bolts 2', 'bolt #2', 'bolts #2', 'is', 'it'],
    ['bolts 1 3', 'bolts #1 and #3', 'bolts #1, #3', 'are', 'them'],
    ['caps 3', 'the right cap', 'caps #right', 'is', 'it'],
    ['caps 1 3', 'the left and right caps', 'caps #left, #right', 'are', 'them'],
  ])('%s', (words, said, typed, isAre, them) => {
    expect(says.subject(fact(words))).toBe(said);
    expect(says.typed(the(words))).toBe(typed);
    expect(says.isAre(fact(words))).toBe(isAre);
    expect(says.them(fact(words))).toBe(them);
    // Of what else it is about the words are the same.
    expect(says.others(fact('lid', [words]))).toBe(said);
    expect(says.typedOthers(fact('lid', [words]))).toBe(typed);
    expect(says.isAre(fact('lid', [words]), 'others')).toBe(isAre);
    expect(says.them(fact('bolts', [words]), 'others')).toBe(them);
  });

  test('several things are many, each of them one', () => {
    const both = fact('lid', ['lid', 'hose']);
    expect(says.others(both)).toBe('the lid and the hose');
    expect(says.typedOthers(both)).toBe('lid, hose');
    expect(says.isAre(both, 'others')).toBe('are');
    expect(says.isAre(both)).toBe('is');
  });

  test('nothing to speak of', () => {
    const bare = fact(undefined);
    expect(says.subject(bare)).toBe('this');
    expect(says.typed(undefined)).toBe('');
    expect(says.others(bare)).toBe('');
    expect(says.typedOthers(bare)).toBe('');
    expect(says.isAre(bare)).toBe('is');
    expect(says.isAre(bare, 'others')).toBe('is');
    expect(says.agree(bare, 'goes', 'go', 'others')).toBe('goes');
  });

  test('a thing does not stand in its own way', () => {
    expect(says.apartFromItself(fact('lid', ['bolts', 'lid'])).others).toEqual([the('bolts')]);
    expect(says.apartFromItself(fact('lid')).others).toEqual([]);
  });

  test('what earlier steps did', () => {
    const one = fact('lid', [], did(['taken off', 'lid'], ['opened', 'tap']));
    expect(says.told(one, 'opened')).toBe(true);
    expect(says.told(one, 'opened', the('tap').thing)).toBe(true);
    expect(says.told(one, 'opened', the('lid').thing)).toBe(false);
    expect(says.told(one, 'closed')).toBe(false);
    expect(says.told(fact('lid'), 'opened')).toBe(false);
  });
});

describe('sentences inside others', () => {
  test.each([
    ['The lid is off.', 'the lid is off.'],
    ['A joint is open.', 'a joint is open.'],
    ['PTO guards are off.', 'PTO guards are off.'],
    ['V-belts are off.', 'V-belts are off.'],
    ['“Dry” is not said.', '“Dry” is not said.'],
    ['the Lid', 'the Lid'],
  ])('%s', (sentence, inside) => {
    expect(says.lower(sentence)).toBe(inside);
  });

  test('and at the beginning', () => {
    expect(says.capital('the lid')).toBe('The lid');
  });
});

describe('verbs that fit the kind of thing', () => {
  test('out of the way', () => {
    expect(says.clear(['lid', 'bolts', 'hose', 'ring', 'leads'].map(the))).toBe(
      'Take off the lid and the ring, take out the bolts and disconnect the hose and the leads',
    );
  });

  test('and back', () => {
    expect(says.bringBack(['lid', 'bolts', 'screw', 'hose', 'tap'].map(the))).toBe(
      'Fit the lid and the tap, put in the bolts and the screw and connect the hose',
    );
  });

  test.each([
    ['lid', [], 'the lid is off'],
    ['guards', [['moved aside', 'guards']], 'the guards are aside'],
    ['guards', [['moved aside', 'lid']], 'the guards are off'],
    [
      'lid',
      [
        ['moved aside', 'lid'],
        ['taken off', 'lid'],
      ],
      'the lid is off',
    ],
    ['bolts', [], 'the bolts are out'],
    ['bolts 2', [['loosened', 'bolts']], 'bolt #2 is loose'],
    [
      'bolts',
      [
        ['loosened', 'bolts'],
        ['taken off', 'bolts'],
      ],
      'the bolts are out',
    ],
    [
      'bolts',
      [
        ['loosened', 'bolts'],
        ['taken off', 'lid'],
      ],
      'the bolts are loose',
    ],
    ['hose', [], 'the hose is disconnected'],
    ['tap', [], 'the tap is off'],
    ['tap', [['opened', 'tap']], 'the tap is open'],
    ['switch', [], 'the switch is off'],
    ['switch', [['locked', 'switch']], 'the switch is locked'],
    ['pin', [], 'the pin is in place'],
  ] as const)('how %s stands after %j', (words, steps, standing) => {
    expect(says.standing(fact('air', [words], did(...steps)))).toBe(standing);
  });
});

describe('a finding', () => {
  const check = checkNamed('left-off')!;
  const cases = new Cases();
  const size = cases.axis('variant size', ['size is small', 'size is large']);
  const place = cases.axis('choice place', ['place is bench', 'place is field']);
  const seen = cases.axis('seen worn', ['“it is worn”', 'not “it is worn”']);
  const plate = cases.axis('seen variant plate', ['“L” is on the variant plate', 'not']);
  const [small, field, worn] = [cases.oneOf(size, [0]), cases.oneOf(place, [1]), cases.oneOf(seen, [0])];
  const finding = (more: Partial<Fact>, built: CaseSet = EVERY) =>
    says.speak(fact('lid', ['bolts 2'], more), check, 'hint', cases, built);

  test.each([
    ['all', EVERY, EVERY, undefined, undefined],
    ['none', NONE, EVERY, undefined, undefined],
    ['one variant', small, EVERY, 'size is small', 'size is small'],
    [
      'a variant and a choice',
      cases.and(small, field),
      EVERY,
      'size is small and place is field',
      'size is small and place is field',
    ],
    ['what is seen', worn, EVERY, '“it is worn”', undefined],
    [
      'a variant and what is seen',
      cases.and(small, worn),
      EVERY,
      'size is small and “it is worn”',
      undefined,
    ],
    ['what a plate shows', cases.oneOf(plate, [0]), EVERY, '“L” is on the variant plate', undefined],
    ['all that are built', small, small, undefined, undefined],
  ])('in the case of %s', (_, set, built, named, when) => {
    const found = finding({ cases: set }, built);
    expect(found.case).toBe(named);
    expect('case' in found).toBe(named !== undefined);
    expect(found.about?.when).toBe(when);
    expect('when' in found.about!).toBe(when !== undefined);
  });

  test('in all cases in which work goes on needs no case named', () => {
    expect(finding({ cases: worn, every: worn }).case).toBeUndefined();
    expect(finding({ cases: worn, every: EVERY }).case).toBe('“it is worn”');
  });

  test('of which no case is known', () => {
    const bare = says.speak(fact('lid'), check, 'hint', undefined, EVERY);
    expect(bare).toEqual({
      ...at,
      check: 'left-off',
      severity: 'hint',
      message: expect.any(String) as string,
      help: expect.any(String) as string,
      related: [],
      about: { check: 'left-off', things: ['lid'], others: [] },
    });
    expect(finding({}).case).toBeUndefined();
    expect('when' in finding({}).about!).toBe(false);
  });

  test('says what it is about', () => {
    expect(finding({ inner: 'left-loose', words: { a: 'b' } }).about).toEqual({
      ...{ check: 'left-loose', things: ['lid'], others: ['bolts #2'] },
      words: { a: 'b' },
    });
    const undecided = { check: 'undecided', at, inner: 'undecided' };
    expect(says.speak(undecided, checkNamed('undecided')!, 'hint', undefined, EVERY).about).toEqual({
      ...{ check: 'undecided', things: [], others: [] },
    });
    const alone = { check: 'undecided', at };
    expect('about' in says.speak(alone, checkNamed('undecided')!, 'hint', undefined, EVERY)).toBe(false);
  });

  test('tells the story with the thing, and what mends it', () => {
    const mends = [{ title: 'Fit it', at: { ...at, start: 4 }, text: 'fit lid' }];
    const found = finding({
      ...did(
        ['taken off', 'lid'],
        ['taken off', 'bolts'],
        ['loosened', 'bolts'],
        ['coated', 'air'],
        ['coated', 'lid'],
        ['filled', 'air'],
      ),
      mends,
    });
    expect(found.related.map(({ message }) => message)).toEqual([
      ...['lid taken off here', 'bolts taken out here', 'bolts loosened here'],
      ...['a joint of the air coated here', 'lid coated here', 'air filled here'],
    ]);
    expect(found.mends).toEqual([{ title: 'Fit it', edits: [{ ...at, start: 4, text: 'fit lid' }] }]);
    expect('mends' in finding({})).toBe(false);
    const nameless = finding({ story: [{ at, what: 'named' }] });
    expect(nameless.related).toEqual([{ ...at, message: 'named here' }]);
  });
});

describe('sentences of findings that are hard to bring about', () => {
  const told = (name: string, words?: Record<string, string>) =>
    checkNamed(name)!.says({ check: name, at, ...(words ? { words } : {}) });

  test('the tool itself failed', () => {
    expect(told('tool-failure', { error: 'No stage is left.' })).toEqual({
      message: 'Dowel failed while it checked this: No stage is left.',
      help: 'The rest was checked. Please report this with the file.',
    });
    expect(told('tool-failure', { error: 'a.b is no function' }).message).toBe(
      'Dowel failed while it checked this: a.b is no function.',
    );
  });

  test('a procedure that is used opens what its user has made live', () => {
    const words = { live: 'live', side: 'does', procedure: 'p' };
    expect(checkNamed('not-made-safe')!.says(fact('hose', ['air'], { words }))).toEqual({
      message: 'This step opens the air at the hose while it is still live.',
      help: 'Isolate it and lock it out before this step. Local safety rules and licensed practice come first.',
    });
  });

  test('nothing was decided from a place on', () => {
    expect(told('undecided')).toEqual({
      message:
        'Too many conditions or repeated steps lead here: whether the steps from here on can be done was not decided.',
      help: 'Put what follows into procedures of its own, one for each variant or finding.',
    });
  });
});

/** Sources: MIL-STD-38784 and ASD-STE100, where a caution is about equipment (from memory); NIOSH 94-110: 23 kg. */
test('a house has its own convention for signal words, and its own guideline for loads', () => {
  const text = `machine rig "rig" {
  part bed "bed" fixed
  part stove "stove" on bed mass 30 kg hazard hot can hurt
}
procedure p "P" for rig people 1 ends with stove off {
  caution hot "A hot stove burns. Wear gloves."
  note hot "It is hot."
  remove stove
}
`;
  const host = memoryHost({ 'rig.dowel': text });
  const found = (house: House) =>
    checkProject(host, ['rig.dowel'], house).findings.map(({ message, help }) => `${message} ${help}`);
  expect(found({})).toEqual([
    'The stove weighs 30 kg, more than the 25 kg that the guideline gives one person at the most. Name what lifts it (`with hoist`), support it before, or say how many people lift (`with 2 people`).',
  ]);
  expect(found({ convention: 'military', liftingGuideline: 'niosh' })).toEqual([
    '`note` is too mild for heat of the stove, a hazard that can hurt people. Write `warning`: in MIL-STD-38784 and ASD-STE100, `note` is no word for a hazard.',
    'The stove weighs 30 kg, more than the 23 kg that the NIOSH equation gives one person at the most. Name what lifts it (`with hoist`), support it before, or say how many people lift (`with 2 people`).',
  ]);
});
