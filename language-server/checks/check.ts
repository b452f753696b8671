/**
 * What a check is: its name, what it says and why, a bad and a good example that run as tests, and the work
 * itself. One file per check; `all.ts` is the one list of them.
 */
import type { Severity } from "../report/finding.ts";

export interface Check {
	/** What is wrong, in words a technician uses: `still-held`. */
	name: string;
	/** Group heading in listings: `Order and completeness`. */
	group:
		| "Order and completeness"
		| "Fastening"
		| "Hazards"
		| "Fluids, faces, consumables"
		| "Tools, time, people"
		| "Flow and measurements"
		| "Names and quantities"
		| "Text"
		| "Machine"
		| "Words and rules";
	severity: Severity;
	/** One line: `A part is taken off while fasteners still hold it.` */
	title: string;
	/** Why it matters and what the checker looks at; Markdown, a few short paragraphs. */
	explanation: string;
	/** Where the rule comes from: a standard, a published case, or `common practice, no source`. */
	source: string;
	/** Whole files that show the fault and its right twin. */
	bad: string;
	good: string;
}
