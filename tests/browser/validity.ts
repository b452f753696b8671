/**
 * Two outside judges of a page: html-validate (element, attribute and content rules of the HTML Living Standard) on
 * its text, and axe-core (rules after WCAG 2.2, all sets) on it in the browser.
 */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { HtmlValidate } from 'html-validate';
import type { Page } from 'playwright-core';

const validator = new HtmlValidate({
  root: true,
  extends: ['html-validate:recommended', 'html-validate:document', 'html-validate:a11y'],
  rules: {
    // Pages are one line where that is shorter, and escape more than they must.
    'no-trailing-whitespace': 'off',
    'long-title': 'off',
    'no-inline-style': 'error',
    // `hidden` inputs and `<use>` are as the standard has them.
    'void-style': ['error', { style: 'omit' }],
    'no-raw-characters': 'error',
    'unrecognized-char-ref': 'error',
  },
});

export async function invalidIn(text: string): Promise<string[]> {
  const report = await validator.validateString(text);
  return report.results.flatMap((result) =>
    result.messages.map(({ ruleId, message, line, column }) => `${line}:${column} ${ruleId}: ${message}`),
  );
}

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeResults {
  violations: { id: string; help: string; nodes: { target: string[]; failureSummary?: string }[] }[];
}

/** What axe-core finds with every rule on, the experimental and best-practice ones too. */
export async function inaccessibleIn(page: Page): Promise<string[]> {
  // Through the debugging protocol: the page's own policy lets no script in, and must not.
  await page.evaluate(AXE);
  const results = (await page.evaluate(`axe.run(document, {
    resultTypes: ['violations'],
    rules: Object.fromEntries(axe.getRules().map(({ ruleId }) => [ruleId, { enabled: true }])),
  })`)) as AxeResults;
  return results.violations.flatMap(({ id, help, nodes }) =>
    nodes.map((node) => `${id}: ${help} at ${node.target.join(' ')}`),
  );
}
