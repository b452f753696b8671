/** A machine as readers see it: its variants and its things by kind, in words. Plain data. */

export interface MachineSheet {
  /** Its name in the source. */
  name: string;
  title: string;
  variants: { name: string; values: string[] }[];
  groups: { kind: string; title: string; entries: MachineEntry[] }[];
}

export interface MachineEntry {
  id: string;
  name: string;
  count?: number;
  /** What is known of it, one short statement each: `thread M8x1.25`, `torque 22 N·m`. */
  facts: string[];
}
