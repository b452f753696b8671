/** Documents of the demo procedures: plain data, stable ids, readable sentences, and what lies on the bench. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { convert, exact, readQuantity } from '../../../grammar/quantity/index.ts';
import { measureOf } from '../../../language-server/lists/measures.ts';
import { memoryHost, type SourceHost } from '../../../language-server/project/project.ts';
import {
  type BuildOptions,
  buildDocument,
  documentsOf,
} from '../../../language-server/publish/document/build.ts';
import { noticesIn, stepsIn } from '../../../language-server/publish/document/rest.ts';
import { flowText } from '../../../language-server/publish/document/text.ts';
import {
  type FlowItem,
  type ProcedureDocument,
  plainText,
} from '../../../language-server/publish/document/types.ts';
import { slipsIn } from './slips.ts';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '../../../procedures');
const disk: SourceHost = {
  read: (path) => {
    try {
      return readFileSync(join(ROOT, path), 'utf8');
    } catch {
      return undefined;
    }
  },
  resolve: (from, target) => join(dirname(from), target),
};
const files = readdirSync(ROOT, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.dowel'))
  .sort();

const MACHINE = `machine m "pump" {
  variant size: small, large
  part body "body" fixed
  part cover "cover" on body  held by bolts  sealed by ring  goes "arrow up"
  part spring "spring" on body  only size is large
  part caps "caps" x2 on body  matched
  seal ring "ring" on body  single-use
  fastener bolts "cover bolts" x4  thread M8x1.25  layout circle  order across  plan { 10 N·m; 22 N·m }
  system mains "mains" live 400 V  isolated at switch
  isolator switch "main switch" in mains
  tool gauge "gauge"
  value gap-limit = 0.3 mm
}
`;

function of(steps: string, options: BuildOptions = {}, headers = ''): ProcedureDocument {
  const text = `${MACHINE}procedure p "Renew the ring" for m ${headers} {\n${steps}\n}\n`;
  return buildDocument(memoryHost({ 'a.dowel': text }), 'a.dowel', 'p', { findings: false, ...options })!;
}

const headings = (document: ProcedureDocument) =>
  stepsIn(document.flow).map(({ heading }) => plainText(heading));

describe.each(files)('%s', (path) => {
  const documents = documentsOf(disk, path, { findings: false });

  test('goes through JSON unchanged', () => {
    for (const document of documents) expect(JSON.parse(JSON.stringify(document))).toEqual(document);
  });

  test('ids are there once and fit for anchors and XML names', () => {
    for (const document of documents) {
      const ids = idsIn(document.flow);
      expect(new Set(ids).size).toBe(ids.length);
      // NCName of Namespaces in XML 1.0, the letters that ids are made of.
      for (const id of ids) expect(id).toMatch(/^[\p{L}_][\p{L}\p{N}._-]*$/u);
    }
  });

  test('numbers are there once', () => {
    for (const document of documents) {
      const numbers = stepsIn(document.flow).map(({ number }) => number);
      expect(new Set(numbers).size).toBe(numbers.length);
    }
  });

  test('no slip of English in any sentence', () => {
    for (const document of documents) {
      const lines = stepsIn(document.flow).flatMap((step) =>
        [step.heading, ...step.more]
          .map(plainText)
          .concat(step.detail.fastening.flatMap(({ stages }) => stages.map(({ sentence }) => sentence))),
      );
      expect(lines.flatMap((line) => slipsIn(line).map((slip) => `${slip}: ${line}`))).toEqual([]);
    }
  });

  test('every target of a link and every field of a step is there', () => {
    for (const document of documents) {
      const ids = new Set(idsIn(document.flow));
      const records = new Set(document.records.map(({ id }) => id));
      for (const step of stepsIn(document.flow)) for (const id of step.records) expect(records).toContain(id);
      for (const { step } of [...document.troubles, ...document.pictures]) expect(ids).toContain(step);
      for (const { steps } of document.hazards) for (const step of steps) expect(ids).toContain(step);
    }
  });
});

function idsIn(items: readonly FlowItem[]): string[] {
  return items.flatMap((item) => {
    const own = [item.id];
    if (item.kind === 'step')
      own.push(...(item.measurement?.rows ?? []).flatMap((row) => [row.id, ...idsIn(row.items)]));
    else if (item.kind === 'branch') own.push(...item.ways.flatMap((way) => [way.id, ...idsIn(way.items)]));
    else if ('items' in item) own.push(...idsIn(item.items));
    if (item.kind === 'repeat' && item.otherwise) own.push(...idsIn(item.otherwise.items));
    return own;
  });
}

describe('ids', () => {
  test('of the other steps stay when a step is put in', () => {
    const before = stepsIn(of('task a "A" { remove bolts\n remove cover }').flow).map(({ id }) => id);
    const after = stepsIn(of('task a "A" { clean cover\n remove bolts\n remove cover }').flow).map(
      ({ id }) => id,
    );
    expect(before).toEqual(['a.remove-bolts', 'a.remove-cover']);
    expect(after).toEqual(['a.clean-cover', ...before]);
  });
});

describe('notices', () => {
  test('stand before the step they guard', () => {
    const [step] = stepsIn(
      of('danger live "The box carries 400 V. It kills. Keep it shut."\nisolate mains').flow,
    );
    expect(step!.notices).toMatchObject([
      {
        signal: 'danger',
        word: 'DANGER',
        symbol: 'electricity',
        hazard: 'The box carries 400 V.',
        consequence: 'It kills.',
        avoidance: 'Keep it shut.',
      },
    ]);
  });

  test('in front of a condition are for every reader', () => {
    const { flow, hazards } = of(
      'warning live "It kills."\nwhen size is large { remove spring }\nisolate mains',
    );
    expect(flow.map(({ kind }) => kind)).toEqual(['note', 'branch', 'step']);
    expect(noticesIn(flow)).toHaveLength(1);
    expect(hazards).toHaveLength(1);
    expect(hazards[0]!.when).toBeUndefined();
  });

  test('at the end of a block are not lost', () => {
    const { flow } = of('remove bolts\nnote "Keep the bolts."');
    expect(noticesIn(flow).map(({ notice }) => plainText(notice.text))).toEqual(['Keep the bolts.']);
  });
});

describe('variants', () => {
  const document = of(
    'when size is large { remove spring } otherwise { clean cover }\nremove caps\nremove spring',
  );

  test('a branch has its ways with their cases', () => {
    expect(document.flow[0]).toMatchObject({
      kind: 'branch',
      by: 'variant',
      ways: [
        { label: 'If the size is large:', when: { any: [{ size: ['large'] }] } },
        { label: 'Otherwise:', when: { any: [{ size: ['small'] }] } },
      ],
    });
  });

  test('a step about what only one variant has is for that one', () => {
    expect(document.flow.at(-1)).toMatchObject({ kind: 'step', when: { sentence: 'if the size is large' } });
    expect(document.variantDifferences.map(({ when, steps }) => [when.sentence, steps.length])).toEqual([
      ['if the size is large', 2],
      ['if the size is small', 1],
    ]);
  });

  test('the job may be for one only', () => {
    const one = of('remove bolts', {}, 'only size is small');
    expect(one.appliesTo.sentence).toBe('Pump: only if the size is small.');
    expect(one.appliesTo.combinations).toEqual([{ size: ['small'] }]);
  });
});

describe('the bench', () => {
  test('fills and empties', () => {
    const document = of(
      'remove bolts\nremove cover\nremove ring and discard\nfit new ring\nrefit cover\nfit bolts',
    );
    const bench = stepsIn(document.flow).map((step) =>
      step.bench.map(({ id, count }) => `${count ?? 1} ${id}`),
    );
    expect(bench).toEqual([
      ['4 bolts'],
      ['4 bolts', '1 cover'],
      ['4 bolts', '1 cover'],
      ['4 bolts', '1 cover'],
      ['4 bolts'],
      [],
    ]);
    expect(document.leftAtEnd).toEqual([]);
    expect(document.tally.find(({ id }) => id === 'ring')).toMatchObject({
      off: { least: 1, most: 1 },
      discarded: { least: 1, most: 1 },
      fresh: { least: 1, most: 1 },
      back: { least: 0, most: 0 },
    });
    expect(document.waste).toMatchObject([{ id: 'ring', count: 1, kind: 'part' }]);
  });

  const counts = (body: string, thing: string) =>
    of(body).tally.flatMap(({ id, off, back, when }) =>
      id === thing
        ? [`${off.least}-${off.most} off, ${back.least}-${back.most} back${when ? ` ${when.sentence}` : ''}`]
        : [],
    );

  test('what was moved aside is not taken off a second time', () => {
    const body = 'remove bolts\nmove aside cover\nremove cover\nrefit cover\nfit bolts';
    expect(counts(body, 'cover')).toEqual(['1-1 off, 1-1 back']);
    expect(counts(body, 'bolts')).toEqual(['4-4 off, 4-4 back']);
  });

  test('what is found decides between the least and the most; every way counts for itself', () => {
    const cracked = 'cracked { remove cover\nrefit cover }';
    expect(counts(`remove bolts\ninspect cover for "cracks" { sound { }\n ${cracked} }`, 'cover')).toEqual([
      '0-1 off, 0-1 back',
    ]);
    const both = `sound { remove cover\nrefit cover }\n ${cracked}`;
    expect(counts(`remove bolts\ninspect cover for "cracks" { ${both} }`, 'cover')).toEqual([
      '1-1 off, 1-1 back',
    ]);
  });

  test('each machine is counted for itself', () => {
    const body =
      'remove bolts\nif size is large { remove cover\nrefit cover\nremove cover\nrefit cover } otherwise { remove cover\nrefit cover }';
    expect(counts(body, 'cover').sort()).toEqual([
      '1-1 off, 1-1 back if the size is small',
      '2-2 off, 2-2 back if the size is large',
    ]);
  });

  test('after the ways of an inspection what may lie there lies there', () => {
    const both = of(
      'remove bolts\ninspect cover for "cracks" { sound { }\n cracked { remove cover } }\nclean body',
    );
    expect(both.leftAtEnd.map(({ id }) => id).sort()).toEqual(['bolts', 'cover']);
    const stopped = of(
      'inspect cover for "cracks" { sound { }\n cracked { remove cover\n stop "Order a cover." } }\nclean body',
    );
    expect(stopped.leftAtEnd).toEqual([]);
    expect(stopped.troubles).toMatchObject([{ sign: 'The cover: cracked.', stops: true }]);
  });

  test('what only one variant takes off says so', () => {
    const { leftAtEnd } = of('when size is large { remove spring }\nclean body');
    expect(leftAtEnd).toMatchObject([{ id: 'spring', when: { sentence: 'if the size is large' } }]);
  });
});

describe('short forms', () => {
  test('reverse is written out with a link to its task', () => {
    const document = of(
      'task a "Take the cover off" { unbolt cover }\nremove ring and discard\nfit new ring\nreverse a',
    );
    expect(headings(document).at(-1)).toBe(
      'Refit the cover, fit the four cover bolts and tighten them in two stages.',
    );
    const group = document.flow.at(-1);
    expect(group).toMatchObject({ kind: 'group', origin: { kind: 'reverse', task: 'a' } });
    expect(plainText(group!.kind === 'group' ? group!.note : [])).toBe(
      'Task 1, “Take the cover off”, in reverse.',
    );
  });

  test('for each is a group a round', () => {
    const { flow } = of(
      'for each #n of caps { remove caps #n }\nfor each side in left, right { clean cover }',
    );
    expect(flow.map((item) => (item.kind === 'group' ? item.title : ''))).toEqual([
      'Cap 1',
      'Cap 2',
      'Side left',
      'Side right',
    ]);
  });

  test('a procedure that is used is linked, and its tools are listed', () => {
    const text = `${MACHINE}procedure first "Open" for m document "D-1" issue 2 tools gauge { remove bolts }
procedure p "Renew" for m { do first
 do nothing-of-that-name }`;
    const document = buildDocument(memoryHost({ 'a.dowel': text }), 'a.dowel', 'p', { findings: false })!;
    expect(document.uses).toMatchObject([{ id: 'first', number: 'D-1', issue: '2', file: 'a.dowel' }]);
    expect(document.lists.tools.map(({ id }) => id)).toEqual(['gauge']);
    expect(document.flow[0]).toMatchObject({
      kind: 'group',
      origin: { kind: 'procedure', link: { id: 'first' } },
    });
    expect(document.flow[1]).toMatchObject({ kind: 'group', items: [] });
  });

  test('a task that leads back to itself ends', () => {
    expect(flowText(of('task a "A" { remove bolts\n do a }'))).toContain('Remove the four cover bolts');
  });
});

test('serial numbers are told as they are written', () => {
  const headers = 'serial numbers "up to 411" serial numbers "from 2000"';
  expect(of('remove bolts', {}, headers).appliesTo.serialNumbers).toEqual(['up to 411', 'from 2000']);
});

describe('measurements', () => {
  const [step] = stepsIn(
    of(
      'measure gap between cover and body with gauge as gap { below 0.1 mm { }\n 0.1..0.3 mm { clean cover }\n over gap-limit { stop "Send it in." } }',
    ).flow,
  );

  test('are tables of readings', () => {
    expect(step!.measurement).toMatchObject({
      what: 'gap between the cover and the body',
      rows: [
        {
          reading: 'below 0.1 mm (0.0040 in)',
          meaning: 'right',
          action: 'Go on.',
          high: { value: 0.1, included: false },
        },
        {
          reading: '0.1 to 0.3 mm (0.0040 to 0.0118 in)',
          meaning: 'not right',
          low: { value: 0.1, included: true },
        },
        { reading: 'over 0.3 mm (0.0118 in)', meaning: 'stop', action: 'Stop here. Send it in.', unit: 'mm' },
      ],
    });
  });

  test('have a field for the reading', () => {
    expect(step!.records).toHaveLength(1);
  });

  test('where every outcome has work to do nothing is called wrong', () => {
    const [one] = stepsIn(
      of('measure gap of cover { below 1 mm { clean cover }\n from 1 mm { clean body } }').flow,
    );
    expect(one!.measurement!.rows.map(({ meaning }) => meaning)).toEqual(['act', 'act']);
  });
});

describe('options of the house', () => {
  test('American words', () => {
    expect(headings(of('remove bolts\nrefit bolts', { words: 'american' }))[1]).toMatch(
      /^Reinstall the four/,
    );
    expect(of('remove bolts', { words: 'american' }).language).toBe('en-US');
  });

  test('units', () => {
    const torque = (options: BuildOptions) =>
      stepsIn(of('tighten bolts to 22 N·m', options).flow)[0]!.detail.fastening[0]!.torque;
    expect(torque({})).toMatchObject({ text: '22 N·m', second: '16.2 lbf·ft' });
    expect(torque({ secondUnits: false })!.second).toBeUndefined();
    expect(torque({ units: 'us' })).toMatchObject({
      text: '16.2 lbf·ft',
      second: '22 N·m',
      low: 22,
      unit: 'N·m',
    });
    expect(torque({ units: 'us', secondUnits: false })!.second).toBeUndefined();
    expect(torque({ units: 'metric' })!.text).toBe('22 N·m');
  });

  test('a second person confirms what the house asks for', () => {
    const { records } = of('isolate mains\nprove mains safe', { secondPerson: ['prove'] });
    expect(records.map(({ kind, label }) => `${kind}: ${label}`)).toEqual([
      'second-person: Seen by a second person: Prove that the mains is dead',
    ]);
  });
});

describe('the check', () => {
  test('counts what is found in this procedure', () => {
    const found = of('remove cover', { findings: undefined as never }).check;
    expect(found.checked).toBe(true);
    expect(found.errors).toBeGreaterThan(0);
    expect(found.findings[0]!.severity).toBe('error');
    expect(of('remove bolts').check.checked).toBe(false);
  });

  test('waivers are told at their step and in the document', () => {
    const document = of('allow still-held because "The bolts are only on the drawing."\nremove cover');
    expect(document.waivers).toMatchObject([{ check: 'still-held', step: 'remove-cover' }]);
    expect(stepsIn(document.flow)[0]!.waivers).toHaveLength(1);
  });
});

// The factors of units are compared with an outside table elsewhere (tests/grammar/quantity).
describe('second units', () => {
  const UNITS = ['N·m', 'lbf·ft', 'mm', 'bar', 'kg', 'L', 'psi', 'in'] as const;

  test('converted back they lie in what was allowed', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...UNITS),
        fc.integer({ min: 1, max: 9999 }),
        fc.integer({ min: 0, max: 2 }),
        fc.option(fc.integer({ min: 1, max: 20 }), { nil: undefined }),
        (unit, digits, decimals, percent) => {
          const typed = `${(digits / 10 ** decimals).toFixed(decimals)} ${unit}${percent === undefined ? '' : ` ± ${percent} %`}`;
          const first = readQuantity(typed);
          if (!first.ok) throw new Error(typed);
          const { second } = measureOf(first.value, { secondUnits: true });
          const back = readQuantity(second!.replace('−', '-').replace(' to ', '..'));
          if (!back.ok) throw new Error(second);
          const converted = convert(back.value, first.value.unit);
          if (!converted.ok) throw new Error(second);
          const number = exact.toNumber;
          const { low, high } = converted.value;
          const nominal = number(first.value.nominal!);
          // A plain value: within 1 %; with a tolerance: inside it.
          const slack = percent === undefined ? nominal * 0.01 : 0;
          expect(number(low!)).toBeGreaterThanOrEqual(number(first.value.low!) - slack - 1e-9);
          expect(number(high!)).toBeLessThanOrEqual(number(first.value.high!) + slack + 1e-9);
        },
      ),
      { numRuns: 300 },
    );
  });

  // 4 lbf·ft are 5.42 N·m, 44 lbf·ft are 59.7 N·m.
  test('a range is rounded inwards', () => {
    const range = readQuantity('5..60 N·m');
    expect(range.ok && measureOf(range.value, { secondUnits: true }).second).toBe('4 to 44 lbf·ft');
  });
});
