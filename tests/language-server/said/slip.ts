/** Texts with small slips: one machine, and the lines in which they differ. */

export interface Slip {
  name: string;
  text: string;
}

/** `machine` ends in its closing brace, `procedure` in its opening one. */
export interface Bench {
  subject: string;
  machine: string;
  procedure?: string;
}

const WORK = 'procedure p "Work" for m {';

/** One procedure for each of the texts, which are its steps. */
export function inSteps({ subject, machine, procedure = WORK }: Bench, steps: readonly string[]): Slip[] {
  return steps.map((lines) => ({
    name: `${subject}, steps ${JSON.stringify(lines)}`,
    text: `${machine}${procedure}\n${lines}\n}\n`,
  }));
}

/** The machine with one more line of declarations, and these steps, of which the machine is not told. */
export function inMachine(
  { subject, machine, procedure = WORK }: Bench,
  lines: readonly string[],
  steps = '',
): Slip[] {
  return lines.map((line) => ({
    name: `${subject}, declared ${JSON.stringify(line)}`,
    text: `${machine.replace(/}\n$/, '')}  ${line}\n}\n${procedure}\n${steps}\n}\n`,
  }));
}

/** Procedures with headers of their own. */
export function inHeaders({ subject, machine }: Bench, procedures: readonly string[]): Slip[] {
  return procedures.map((lines) => ({
    name: `${subject}, ${JSON.stringify(lines)}`,
    text: `${machine}${lines}\n`,
  }));
}
