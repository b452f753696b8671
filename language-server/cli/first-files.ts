/** What `dowel init` writes. The machine and the job are invented; the tests check that they are clean. */

export interface FirstFile {
  path: string;
  text: string;
  /** A script that can be run. */
  runs?: boolean;
}

export const CI_SERVICES = ['shell', 'github', 'gitlab'] as const;
export type CiService = (typeof CI_SERVICES)[number];

const MACHINE = `// The machine: what sits on what, what holds it, how tight. Every job is checked against it.
machine garden-pump "Garden pump" {
  part housing "pump housing" fixed
  part cover "suction cover" on housing  held by cover-screws  sealed by cover-ring
  part impeller "impeller" on housing  under cover
  fastener cover-screws "cover screws" x6
    clamps cover to housing
    thread M6x1
    class 8.8
    torque 9 N·m
    layout circle
    order across
  seal cover-ring "cover ring" single-use

  system mains "mains supply" live 230 V  isolated at switch
  isolator switch "main switch" on housing

  tool torque-wrench "torque wrench" range 2..25 N·m
  tool padlock "padlock"
  tool voltage-tester "two-pole voltage tester"
}
`;

const JOB = `use "garden-pump.dowel"

procedure clear-impeller "Clear the impeller"
  for garden-pump
  document "GP-01" issue 1 "2026-01-15"
  people 1  skill "trained technician"  time 30 min
  wear gloves
  tools torque-wrench, padlock, voltage-tester
  supplies cover-ring
{
  task make-safe "Make safe" {
    danger live "The pump carries 230 V. Touching it kills. Work only when it is locked out and proved dead."
    isolate mains
    lock out switch with padlock
    prove mains safe with voltage-tester "Prove the tester on a known live point before and after."
  }

  task work "Clear the impeller" {
    loosen cover-screws in reverse order
    remove cover-screws
    remove cover
    remove cover-ring and discard
    caution sharp "Broken blades cut. Wear gloves."
    inspect impeller for "wedged stones, cracked blades" {
      sound { }
      cracked { stop "Renew the impeller before the pump runs again." }
    }
    fit new cover-ring
    refit cover
    fit cover-screws by hand
    tighten cover-screws to 9 N·m with torque-wrench
  }

  task prove "Prove it" {
    unlock switch
    restore mains
    run for 2 min expect "Water comes within half a minute, and no drop hangs at the cover."
  }
}
`;

export const FIRST_FILES: readonly FirstFile[] = [
  { path: 'garden-pump.dowel', text: MACHINE },
  { path: 'clear-impeller.dowel', text: JOB },
  { path: 'dowel.config.json', text: '{\n  "words": "british"\n}\n' },
];

/** The same two commands everywhere: check with reports, and show what changed in meaning. */
const CHECK = 'dowel check . --output junit=dowel.xml --output sarif=dowel.sarif';

export const CI_EXAMPLES: Readonly<Record<CiService, FirstFile>> = {
  shell: {
    path: 'check-procedures.sh',
    runs: true,
    text: `#!/bin/sh
# Checks every procedure below this folder. Ends with 0: nothing to report; 1: findings; 2: something could not be read.
set -eu
cd "$(dirname "$0")"
${CHECK}
`,
  },
  github: {
    path: '.github/workflows/procedures.yml',
    text: `name: Procedures
on: [push, pull_request]
permissions:
  contents: read
  security-events: write
jobs:
  check:
    runs-on: ubuntu-latest
    steps:
      - uses: actions/checkout@v4
        with:
          fetch-depth: 0
      - uses: actions/setup-node@v4
        with:
          node-version: 20
      - run: npm ci
      - name: Check
        run: npx ${CHECK}
      - name: What has changed in meaning
        if: github.event_name == 'pull_request'
        run: npx dowel compare "origin/\${{ github.base_ref }}" . || test $? -eq 1
      - uses: github/codeql-action/upload-sarif@v3
        if: always()
        with:
          sarif_file: dowel.sarif
`,
  },
  gitlab: {
    path: '.gitlab-ci.yml',
    text: `procedures:
  image: node:20
  script:
    - npm ci
    - npx ${CHECK}
  artifacts:
    when: always
    reports:
      junit: dowel.xml
`,
  },
};
