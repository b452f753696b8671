/** The form of the configuration file, field by field, and its JSON Schema for editors. */
import { z } from 'zod';
import { SETTABLE_CHECKS } from '../checks/settable.ts';
import { defaultConfig } from './house.ts';

/** Words for a severity, as the file says it. */
export const SEVERITY_WORDS = ['error', 'warning', 'info', 'hint', 'off'] as const;

const path = z.string().min(1);
const limit = z.int().min(1).max(1_000_000);

export const configSchema = z.strictObject({
  $schema: z.string().optional().describe('Where editors find the form of this file.'),
  severities: z
    .partialRecord(z.enum(SETTABLE_CHECKS as [string, ...string[]]), z.enum(SEVERITY_WORDS))
    .optional()
    .describe('How severe the findings of a check are, by its name; off: they are not reported.'),
  convention: z
    .enum(['ansi', 'military'])
    .default(defaultConfig.convention)
    .describe(
      'What signal words mean. ansi: ANSI Z535.6, ISO 3864-2 (caution is an injury). military: MIL-STD-38784, ASD-STE100 (caution is damage).',
    ),
  words: z
    .enum(['british', 'american'])
    .default(defaultConfig.words)
    .describe('Published words: refit and spanner, or reinstall and wrench.'),
  units: z
    .enum(['as written', 'metric', 'us'])
    .default(defaultConfig.units)
    .describe('The unit in which a published quantity stands.'),
  secondUnit: z
    .enum(['as written', 'always', 'never'])
    .default(defaultConfig.secondUnit)
    .describe('A second unit in brackets: where the author wrote one, always, or never.'),
  liftingGuideline: z
    .enum(['hse', 'niosh'])
    .default(defaultConfig.liftingGuideline)
    .describe(
      'Weights lifted by hand are held against: hse, the guideline filter (HSE L23); niosh, the load constant of the revised lifting equation for one person.',
    ),
  rules: z
    .array(path)
    .default([...defaultConfig.rules])
    .describe('Files with rules of the house that hold for every procedure, seen from this file.'),
  ignore: z
    .array(path)
    .default([...defaultConfig.ignore])
    .describe('Paths that are left out when a folder is checked, seen from this file; * and ** as usual.'),
  limits: z
    .strictObject({
      findings: limit.default(defaultConfig.limits.findings).describe('In all.'),
      perFile: limit.default(defaultConfig.limits.perFile).describe('For one file.'),
    })
    .default(defaultConfig.limits)
    .describe('How many findings a report lists at the most.'),
});

export const SCHEMA_TITLE = 'Dowel: what the house has agreed on';

/** JSON Schema (draft 7, which editors know best), as text that ends in a line end. */
export function schemaText(): string {
  const { $schema, ...schema } = z.toJSONSchema(configSchema, { target: 'draft-7', io: 'input' });
  return `${JSON.stringify({ $schema, title: SCHEMA_TITLE, ...schema }, null, 2)}\n`;
}
