/**
 * Findings as SARIF 2.1.0 (OASIS standard), the form in which CI services and code hosts take the findings of a
 * checker. The story of a finding is given twice, as related locations and as a code flow, because readers of this form
 * show one or the other. Plain data in and out; the caller writes it.
 */
import { DEFERENCE } from './deference.ts';
import type { Finding, Place, Severity } from './finding.ts';
import type { Unread } from './json.ts';
import type { Lines } from './positions.ts';

/** What a reader is told about a check, beside its findings. */
export interface Rule {
  name: string;
  severity: Severity;
  group: string;
  title: string;
  /** Markdown. */
  explanation: string;
  source: string;
}

export interface SarifInput {
  version: string;
  /** All checks there are; a finding's check is one of them. */
  rules: readonly Rule[];
  findings: readonly Finding[];
  /** One for each finding, in the same order. */
  fingerprints: readonly string[];
  /** Findings that were waived in the text, with the author's reason. */
  waived?: readonly { finding: Finding; fingerprint: string; reason: string }[];
  unread: readonly Unread[];
  lines(file: string): Lines | undefined;
}

const LEVELS: Readonly<Record<Severity, 'error' | 'warning' | 'note'>> = {
  error: 'error',
  warning: 'warning',
  information: 'note',
  hint: 'note',
};

export function sarifReport(input: SarifInput): object {
  const { rules, lines } = input;
  const index = new Map(rules.map(({ name }, at) => [name, at]));
  const result = (finding: Finding, fingerprint: string) => ({
    ruleId: finding.check,
    ...(index.has(finding.check) ? { ruleIndex: index.get(finding.check) } : {}),
    level: LEVELS[finding.severity],
    message: { text: sentence(finding) },
    locations: [location(finding, lines)],
    ...(finding.related.length > 0 ? story(finding, lines) : {}),
    partialFingerprints: { 'dowel/v1': fingerprint },
    ...(finding.mends && finding.mends.length > 0 ? { fixes: fixes(finding, lines) } : {}),
  });
  return {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: {
          driver: {
            name: 'Dowel',
            version: input.version,
            fullDescription: { text: DEFERENCE },
            rules: rules.map(ruleOf),
          },
        },
        invocations: [
          {
            executionSuccessful: input.unread.length === 0,
            toolExecutionNotifications: input.unread.map(({ file, reason }) => ({
              level: 'error',
              message: { text: `Cannot check ${file}: ${reason}.` },
              locations: [{ physicalLocation: { artifactLocation: artifact(file) } }],
            })),
          },
        ],
        columnKind: 'utf16CodeUnits',
        results: [
          ...input.findings.map((finding, at) => result(finding, input.fingerprints[at]!)),
          ...(input.waived ?? []).map(({ finding, fingerprint, reason }) => ({
            ...result(finding, fingerprint),
            suppressions: [{ kind: 'inSource', status: 'accepted', justification: reason }],
          })),
        ],
      },
    ],
  };
}

function ruleOf(rule: Rule): object {
  const about = `${rule.explanation.trim()}\n\nSource: ${rule.source}`;
  return {
    id: rule.name,
    shortDescription: { text: rule.title },
    fullDescription: { text: rule.title },
    help: { text: about, markdown: about },
    defaultConfiguration: { level: LEVELS[rule.severity] },
    properties: { tags: [rule.group] },
  };
}

/** What is wrong, in which case, and what to do: readers of this form show one message. */
function sentence({ message, case: named, help }: Finding): string {
  return [message, named === undefined ? '' : `Case: ${named}.`, help ?? '']
    .filter((one) => one !== '')
    .join(' ');
}

function story(finding: Finding, lines: SarifInput['lines']): object {
  const told = finding.related.map((related) => ({
    ...location(related, lines),
    message: { text: related.message },
  }));
  const end = { ...location(finding, lines), message: { text: finding.message } };
  return {
    relatedLocations: told.map((one, at) => ({ id: at + 1, ...one })),
    codeFlows: [{ threadFlows: [{ locations: [...told, end].map((one) => ({ location: one })) }] }],
  };
}

function fixes(finding: Finding, lines: SarifInput['lines']): object[] {
  return (finding.mends ?? []).map(({ title, edits }) => ({
    description: { text: title },
    artifactChanges: [...new Set(edits.map(({ file }) => file))].map((file) => ({
      artifactLocation: artifact(file),
      replacements: edits
        .filter((edit) => edit.file === file)
        .map((edit) => ({ deletedRegion: region(edit, lines), insertedContent: { text: edit.text } })),
    })),
  }));
}

function location(place: Place, lines: SarifInput['lines']) {
  return {
    physicalLocation: { artifactLocation: artifact(place.file), region: region(place, lines) },
  };
}

function region({ file, start, end }: Place, linesOf: SarifInput['lines']): object {
  const lines = linesOf(file);
  if (lines === undefined) return { charOffset: start, charLength: end - start };
  const from = lines.at(start);
  const to = lines.at(end);
  return {
    startLine: from.line + 1,
    startColumn: from.column + 1,
    endLine: to.line + 1,
    endColumn: to.column + 1,
  };
}

/** A path inside the working folder is given against the root of the sources, as the standard asks. */
function artifact(file: string): object {
  const uri = file.split('/').map(encodeURIComponent).join('/');
  if (/^[A-Za-z]:/.test(file)) return { uri: `file:///${file[0]}:${uri.slice(4)}` };
  return file.startsWith('/') ? { uri: `file://${uri}` } : { uri, uriBaseId: '%SRCROOT%' };
}
