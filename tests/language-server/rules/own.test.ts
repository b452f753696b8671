/** Rules at the top of a procedure's file (grammar/LANGUAGE.md, "Rules of the house"): where they hold, and slips in them. */
import { expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';

const MACHINE = `machine rig "rig" {
  part bed "bed" fixed
  part drum "drum" on bed
}
`;
const RULE = 'rule still "The drum stands still." { never turn drum }\n';
const job = (name: string, steps: string) => `procedure ${name} "${name}" for rig {\n  ${steps}\n}\n`;

function found(files: Record<string, string>, ...paths: string[]): string[] {
  return checkTexts(files, ...paths).findings.map(({ file, check }) => `${file} ${check}`);
}

test('a rule at the top of the file of a procedure holds for that file and for no other', () => {
  const files = {
    'rig.dowel': MACHINE,
    'ruled.dowel': `use "rig.dowel"\n${RULE}${job('ruled', 'turn drum')}`,
    'free.dowel': `use "rig.dowel"\n${job('free', 'turn drum')}`,
    'kept.dowel': `use "rig.dowel"\n${RULE}${job('kept', 'clean drum')}`,
  };
  expect(found(files)).toEqual(['ruled.dowel rule-broken']);
});

test('so does a rule of a file of rules that it uses', () => {
  const files = {
    'rig.dowel': MACHINE,
    'rules.dowel': RULE,
    'job.dowel': `use "rig.dowel"\nuse "rules.dowel"\n${job('job', 'turn drum')}`,
  };
  expect(found(files, 'job.dowel')).toEqual(['job.dowel rule-broken']);
});

test('a used procedure that breaks its own rule is told of where it stands', () => {
  const files = {
    'rig.dowel': MACHINE,
    'ruled.dowel': `use "rig.dowel"\n${RULE}${job('ruled', 'turn drum')}`,
    'user.dowel': `use "ruled.dowel"\n${job('user', 'do ruled')}`,
  };
  expect(found(files)).toEqual(['ruled.dowel rule-broken']);
});

test('a rule that the machine knows already is told of once', () => {
  const files = { 'all.dowel': `${RULE}${MACHINE}${job('all', 'turn drum')}` };
  expect(found(files)).toEqual(['all.dowel rule-broken']);
});

test('a name that no machine of the file has', () => {
  const files = {
    'rig.dowel': MACHINE,
    'job.dowel': `use "rig.dowel"\n${RULE.replace('turn drum', 'turn drun')}${job('one', 'turn drum')}${job('two', 'turn drum')}`,
  };
  expect(found(files, 'job.dowel')).toEqual(['job.dowel unknown-name']);
});
