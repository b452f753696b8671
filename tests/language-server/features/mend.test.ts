/**
 * What is offered for a finding, and what a file looks like afterwards. The faults are the bad examples of the checks;
 * what a technician would do about each stands here, written by hand (common practice, no source). That a mended text is
 * right is judged by the oracle, which was written from the language reference alone, not only by the checker.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkNamed } from '../../../language-server/checks/all.ts';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';
import { mendFile, mendsFor } from '../../../language-server/features/mend.ts';
import { editsBetween } from '../../../language-server/features/mend-lines.ts';
import { Trial } from '../../../language-server/features/trial.ts';
import { memoryHost } from '../../../language-server/project/project.ts';
import type { Finding, Mend } from '../../../language-server/report/finding.ts';
import { execute } from '../../oracle/executor.ts';
import { unmark } from '../../support/marked.ts';

const PATH = 'job.dowel';

function serious(text: string): Finding[] {
  return checkTexts({ [PATH]: text }, PATH).findings.filter(
    ({ severity }) => severity === 'error' || severity === 'warning',
  );
}

function offered(text: string, check: string): Mend[] {
  const finding = serious(text).find((one) => one.check === check);
  if (!finding) throw new Error(`${check} is not found in:\n${text}`);
  return mendsFor(memoryHost({ [PATH]: text }), PATH, finding);
}

function applied(text: string, { edits }: Mend): string {
  return [...edits]
    .sort((a, b) => b.start - a.start)
    .reduce((now, { start, end, text: put }) => now.slice(0, start) + put + now.slice(end), text);
}

describe('the first mend of a bad example', () => {
  it.each([
    ['left-off', 'Write `refit spacer` after `fit new pulley`'],
    ['left-loose', 'Write `tighten motor-bolts` after `fit new belt`'],
    ['left-aside', 'Write `move back loom` after `fit new filter`'],
    ['left-open', 'Write `open fuel-tap` after `refit bowl`'],
    ['left-disconnected', 'Write `connect fan-plug` after `bolt up cooling-fan`'],
    ['left-drained', 'Write `fill coolant` after `fit new thermostat`'],
    ['left-isolated', 'Write `restore mains` after `fit new motor-brush`'],
    ['left-locked', 'Write `unlock spindle` after `fit new chuck`'],
    ['left-supported', 'Write `lower gearbox` after `bolt up crossmember`'],
    ['fixture-left-on', 'Write `remove holding-bar` after `fit rotor-nut`'],
    ['bypass-left', 'Write `remove jumper` after `turn barrel 2 turns by hand`'],
    ['refitted-before-removed', 'Write `loosen motor-bolts` before `remove belt and discard`'],
    ['done-twice', 'Delete `refit check-valve`'],
    ['still-held', 'Write `remove cover-screws` before `remove cover`'],
    ['still-connected', 'Write `disconnect blower-plug` before `unbolt blower and discard`'],
    ['covered', 'Move `remove belt and discard` after `unbolt guard`'],
    ['seat-missing', 'Move `refit fan` after `fit new hub`'],
    ['seal-missing', 'Write `fit new lid-gasket` after `remove lid-gasket and discard`'],
    ['not-in-place', 'Move `align roller` before `unbolt roller`'],
    ['not-supported', 'Move `unbolt crossmember` after `support gearbox with jack`'],
    ['turned-while-locked', 'Move `turn crankshaft 2 turns by hand` after `remove locking-pin`'],
    ['not-marked', 'Write `mark wear-pads` before `remove wear-pads`'],
    ['wrong-verb', 'Write `disconnect hose` before `cap hose`'],
    ['restored-out-of-order', 'Move `fill hydraulics` after `fit drain-plug`'],
    ['discarded-reused', 'Write `fit new filter-bag` instead of `fit filter-bag`'],
    ['single-use-reused', 'Write `fit new wheel-nut` instead of `fit wheel-nut`'],
    ['tightened-unseated', 'Write `fit head-bolts by hand` after `refit head`'],
    ['stage-skipped', 'Write `tighten head-bolts stage 2` after `tighten head-bolts stage 1`'],
    ['stage-repeated', 'Delete `tighten head-bolts stage 2`'],
    ['not-secured', 'Write `secure flange-bolts` after `fit flange-bolts`'],
    ['not-proved-safe', 'Write `prove mains safe with tester` after `isolate mains`'],
    ['isolated-out-of-order', 'Move `lock out disconnector with padlock` after `isolate mains`'],
    ['not-bled', 'Write `bleed brakes` after `top up brakes`'],
    ['face-not-cleaned', 'Write `clean lid-face` after `remove lid-gasket and discard`'],
    ['opened-full', 'Write `top up coolant` after `fit new thermostat`'],
    ['branch-unfinished', 'Move `bolt up bowl-cover` after `clean bowl`'],
    ['variant-uncovered', 'Move `bolt up side-plate` after `unbolt side-plate`'],
    ['loop-not-restored', 'Move `bolt up gate` after `adjust shim`'],
    ['caution-late', 'Move `remove wheel` after `warning pressure`'],
    ['tool-unlisted', 'Write `torque-wrench, blade-lock` instead of `torque-wrench`'],
    ['supply-short', 'Write `valve-disc, bonnet-ring` instead of `valve-disc`'],
    ['swapped', 'Write `refit pistons #1 at #1` instead of `refit pistons #1 at #2`'],
  ])('%s: %s', (check, title) => {
    const { text } = unmark(checkNamed(check)!.bad);
    const [first] = offered(text, check);
    expect(first?.title).toBe(title);
    const after = applied(text, first!);
    expect(serious(after)).toEqual([]);
    expect(execute({ [PATH]: after }, PATH)).toEqual([]);
  });

  it('keeps the mend that the check itself knows', () => {
    const { text } = unmark(checkNamed('unknown-name')!.bad);
    const [first] = offered(text, 'unknown-name');
    expect(first!.title).toBe('Write cover');
    expect(serious(applied(text, first!))).toEqual([]);
  });

  it('is nothing where only a person can know', () => {
    const { text } = unmark(checkNamed('range-gap')!.bad);
    expect(offered(text, 'range-gap')).toEqual([]);
  });
});

const MACHINE = `machine feed-pump "feed pump" {
  variant drive: belt, direct

  part base "base" fixed
  part guard "belt guard" on base  held by guard-screws  only drive is belt
  part casing "casing" on base
  part cover "front cover" on casing  under guard  held by cover-bolts  sealed by cover-gasket
  part impeller "impeller" on casing  under cover
  seal cover-gasket "cover gasket" on casing  single-use
  face cover-face "face of the cover" under cover-gasket
  fastener guard-screws "guard screws" x4
  fastener cover-bolts "cover bolts" x8  torque 20 N·m
}

procedure renew-impeller "Renew the impeller"
  for feed-pump
  supplies impeller
{
`;

/** Everything is taken off, and nothing is put back. */
const STRIPPED = `${MACHINE}  unbolt guard
  remove cover-bolts
  remove cover  // Mind the edge.
  remove cover-gasket and discard
  remove impeller and discard
}
`;

describe('a file', () => {
  it('whose second half is missing is finished, laid out like the rest, and orders what it needs', () => {
    const { text, left, mended } = mendFile(memoryHost({ [PATH]: STRIPPED }), PATH);
    expect(left).toEqual([]);
    expect(mended.length).toBeGreaterThan(0);
    expect(execute({ [PATH]: text }, PATH)).toEqual([]);
    // The steps that were there are still there, in their order, with their comments.
    const lines = text.split('\n');
    const kept = STRIPPED.split('\n').filter((line) => !line.includes('supplies'));
    expect(lines.filter((line) => kept.includes(line))).toEqual(kept);
    expect(text).toContain('  supplies impeller, cover-gasket\n');
    const added = lines.filter((line) => !kept.includes(line) && !line.includes('supplies'));
    expect(
      added.every((line) => /^ {2}\S/.test(line)),
      added.join('\n'),
    ).toBe(true);
  });

  it('that is right is left alone', () => {
    const { text } = unmark(checkNamed('left-off')!.good);
    const result = mendFile(memoryHost({ [PATH]: text }), PATH);
    expect(result).toEqual({ text, mended: [], left: [], tries: 1 });
  });

  it('of one variant is finished for that variant only', () => {
    const text = `${MACHINE}  when drive is belt {
    remove guard-screws
    remove guard
  }
  remove cover-bolts
  remove cover
  remove cover-gasket and discard
  remove impeller and discard
  fit new impeller
  clean cover-face
  fit new cover-gasket
  refit cover
  fit cover-bolts
}
`;
    const listed = text.replace('supplies impeller', 'supplies impeller, cover-gasket');
    const { text: after, left } = mendFile(memoryHost({ [PATH]: listed }), PATH);
    expect(left).toEqual([]);
    expect(execute({ [PATH]: after }, PATH)).toEqual([]);
    expect(after).toMatch(/fit cover-bolts\n[\s\S]*(bolt up guard|refit guard)/);
  });

  it('keeps its kind of line ends', () => {
    const text = STRIPPED.replaceAll('\n', '\r\n');
    const { text: after } = mendFile(memoryHost({ [PATH]: text }), PATH);
    expect(after).not.toBe(text);
    expect(after.replaceAll('\r\n', '').includes('\n')).toBe(false);
  });

  it('that cannot be read is no reason to fail', () => {
    expect(mendFile(memoryHost({}), PATH)).toEqual({ text: '', mended: [], left: [], tries: 1 });
    const broken = `${STRIPPED.slice(0, -20)} } } when`;
    expect(() => mendFile(memoryHost({ [PATH]: broken }), PATH)).not.toThrow();
  });
});

describe('a trial', () => {
  it('says what a fresh check says, whatever was tried before', () => {
    const machine = STRIPPED.slice(0, STRIPPED.indexOf('procedure'));
    const steps = STRIPPED.slice(STRIPPED.indexOf('procedure')).split('\n');
    const use = 'use "machine.dowel"\n\n';
    const files = { 'machine.dowel': machine, [PATH]: use + steps.join('\n') };
    const trial = new Trial(memoryHost(files), PATH);
    fc.assert(
      fc.property(
        fc.integer({ min: 4, max: steps.length - 3 }),
        fc.constantFrom('out', 'twice', 'seen'),
        (line, how) => {
          const step = steps[line]!;
          const changed = {
            out: [],
            twice: [step, step],
            seen: [
              `  inspect cover for "cracks" { sound { ${step.replace(/\/\/.*/, '')} }  cracked { stop "It is worn." } }`,
            ],
          }[how]!;
          const text = use + [...steps.slice(0, line), ...changed, ...steps.slice(line + 1)].join('\n');
          const expected = checkTexts({ ...files, [PATH]: text }, PATH).findings;
          expect(trial.check(text).findings).toEqual(expected);
        },
      ),
      { numRuns: 60, seed: 7 },
    );
  });
});

describe('the replacements between two texts', () => {
  const text = fc
    .array(fc.constantFrom('a', 'b', 'c', ''), { maxLength: 12 })
    .map((lines) => lines.join('\n'));

  it('make the one the other, and do not overlap', () => {
    fc.assert(
      fc.property(text, text, (before, after) => {
        const edits = editsBetween(before, after);
        let at = 0;
        let result = '';
        for (const edit of edits) {
          expect(edit.start).toBeGreaterThanOrEqual(at);
          result += before.slice(at, edit.start) + edit.text;
          at = edit.end;
        }
        expect(result + before.slice(at)).toBe(after);
      }),
      { numRuns: 2000, seed: 11 },
    );
  });
});
