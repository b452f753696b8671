/** What files bring to each other: `use`, `extends`, `like`. The expected meaning is the language reference's. */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';
import { buildModel } from '../../../language-server/model/build.ts';
import { Loader } from '../../../language-server/model/names.ts';
import { memoryHost } from '../../../language-server/project/project.ts';

const SHARED = `fluid oil "oil"
fastener m8 "M8 bolt" thread M8x1.25 class 8.8 torque 25 N·m
`;
const BASE = `use "shared.dowel"
machine base-rig "base rig" {
  part frame "frame" fixed
  part cover "cover" on frame held by bolts mass 3 kg
  fastener bolts "bolts" x4 like m8
}
`;
const LONG = `use "base.dowel"
machine long-rig "long rig" extends base-rig {
  part cover "long cover" on frame held by bolts, long-bolts mass 5 kg
  fastener long-bolts "long bolts" x2 like m8 torque 30 N·m
}
`;
const FILES = { 'shared.dowel': SHARED, 'base.dowel': BASE, 'long.dowel': LONG };

function model(path: keyof typeof FILES) {
  const loader = new Loader(memoryHost(FILES));
  const file = loader.load(path)!;
  return buildModel(file.machines[0], file, loader.visible(file));
}

function findings(files: Record<string, string>, path: string): string[] {
  return checkTexts(files, path).findings.map(({ check }) => check);
}

describe('a machine made of several files', () => {
  test('has its own things, those of the machine it extends and those that its files share', () => {
    const { model: long, facts } = model('long.dowel');
    expect(facts).toEqual([]);
    expect([...long.byName.keys()].sort()).toEqual(['bolts', 'cover', 'frame', 'long-bolts', 'm8', 'oil']);
    expect(long.byName.get('cover')?.title).toBe('long cover');
    expect(long.byName.get('frame')?.place.file).toBe('base.dowel');
  });

  test('takes clauses from what it is like, and its own before those', () => {
    const long = model('long.dowel').model;
    const torque = (name: string) => long.byName.get(name)?.torque?.amounts[0]?.number;
    expect([torque('bolts'), torque('long-bolts')]).toEqual(['25', '30']);
    const clauses = long.byName.get('long-bolts')?.declaration.clauses.map(({ clause }) => clause);
    expect(clauses).toContain('thread');
    expect(clauses?.filter((clause) => clause === 'torque')).toHaveLength(1);
  });

  test('is right, each file by itself too', () => {
    for (const path of Object.keys(FILES)) expect(findings(FILES, path)).toEqual([]);
  });

  test('and a procedure for it sees all of it', () => {
    const job = `use "long.dowel"
procedure open-up "Open" for long-rig ends with cover off { unbolt cover }
procedure slip "Slip" for long-rig { clean frme }
`;
    const result = checkTexts({ ...FILES, 'job.dowel': job }, 'job.dowel').findings;
    expect(result.map(({ message }) => message)).toEqual(['Nothing is called `frme`; did you mean `frame`?']);
  });
});

describe('references that lead nowhere or round', () => {
  test.each([
    ['file-missing', 'use "gone.dowel"'],
    ['use-cycle', 'use "a.dowel"'],
    ['unknown-name', 'machine rig "rig" extends base-rgi { }'],
    ['use-cycle', 'machine rig "rig" extends rig { }'],
    ['unknown-name', 'machine rig "rig" { part a "a" like b }'],
    ['unknown-name', 'procedure p "p" for rig { clean x }'],
    ['machine-missing', 'procedure p "p" { clean x }'],
    ['procedure-missing', 'machine rig "rig" { }\nprocedure p "p" for rig starts where q ends { }'],
    ['duplicate-name', 'machine rig "rig" { }\nmachine rig "rig" { }'],
  ])('%s: %s', (check, text) => {
    expect(findings({ 'a.dowel': text }, 'a.dowel')).toEqual([check]);
  });

  test('declarations that are like each other', () => {
    const text = 'machine rig "rig" {\n  part a "a" like b\n  part b "b" like a\n}\n';
    expect(new Set(findings({ 'a.dowel': text }, 'a.dowel'))).toEqual(new Set(['use-cycle']));
  });

  test('procedures of two files that do each other', () => {
    const files = {
      'rig.dowel': 'machine rig "rig" { }\n',
      'a.dowel': 'use "rig.dowel"\nuse "b.dowel"\nprocedure a "a" for rig { do b }\n',
      'b.dowel': 'use "rig.dowel"\nuse "a.dowel"\nprocedure b "b" for rig { do a }\n',
    };
    expect(findings(files, 'a.dowel')).toEqual(['use-cycle']);
    expect(findings(files, 'b.dowel')).toEqual(['use-cycle']);
  });

  test('files that use each other are right', () => {
    const files = {
      'a.dowel': 'use "b.dowel"\nmachine a "a" { }\n',
      'b.dowel': 'use "a.dowel"\nmachine b "b" { }\n',
    };
    expect(findings(files, 'a.dowel')).toEqual([]);
  });

  test('a procedure that is printed elsewhere needs no machine and no steps', () => {
    const text = `machine rig "rig" { system mains "mains" live 400 V }
procedure shut-down elsewhere "chapter 2" ends with mains isolated
procedure look "Look" for rig { do shut-down  restore mains }
`;
    expect(findings({ 'a.dowel': text.replace('  restore', '\nrestore') }, 'a.dowel')).toEqual([]);
  });
});
