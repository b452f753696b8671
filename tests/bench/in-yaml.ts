/** The content in YAML, in the shape of the JSON one: the same schema holds for it. */
import type { Content } from './content.ts';

export function inYaml({ axes, housings, parts, tasks }: Content): string {
  return written({ axes, housings, parts, tasks }, '').join('\n').concat('\n');
}

/** Block style, as people write it. Texts that are no plain words stand in quotation marks. */
function written(value: unknown, indent: string): string[] {
  if (Array.isArray(value)) {
    return value.flatMap((one: unknown) => {
      if (typeof one !== 'object' || one === null) return [`${indent}- ${scalar(one)}`];
      const [first, ...rest] = written(one, `${indent}  `);
      return [`${indent}- ${first!.trimStart()}`, ...rest];
    });
  }
  return Object.entries(value as object).flatMap(([key, inner]) => {
    if (typeof inner !== 'object' || inner === null) return [`${indent}${key}: ${scalar(inner)}`];
    if (Array.isArray(inner) && inner.length === 0) return [`${indent}${key}: []`];
    return [`${indent}${key}:`, ...written(inner, `${indent}  `)];
  });
}

function scalar(value: unknown): string {
  return typeof value === 'string' && !/^[a-z][a-z0-9-]*$/.test(value)
    ? JSON.stringify(value)
    : String(value);
}
