/** The content in JSON, and a JSON Schema for it: shapes, words and numbers; it cannot know the names. */
import type { Content } from './content.ts';

export function inJson({ axes, housings, parts, tasks }: Content): string {
  return JSON.stringify({ axes, housings, parts, tasks }, null, 2);
}

const name = { type: 'string', pattern: '^[a-z][a-z0-9-]*$' };
const text = { type: 'string', minLength: 1 };

export const JSON_SCHEMA = {
  type: 'object',
  required: ['axes', 'housings', 'parts', 'tasks'],
  additionalProperties: false,
  properties: {
    axes: { type: 'array', items: name },
    housings: { type: 'array', items: name },
    parts: {
      type: 'array',
      items: {
        type: 'object',
        required: ['id', 'housing', 'title', 'bolts', 'count', 'thread', 'torque'],
        additionalProperties: false,
        properties: {
          id: name,
          housing: name,
          title: text,
          bolts: name,
          count: { type: 'integer', minimum: 1 },
          thread: { type: 'string', pattern: '^M[0-9]+(x[0-9.]+)?$' },
          torque: { type: 'number', exclusiveMinimum: 0 },
          axis: name,
        },
      },
    },
    tasks: {
      type: 'array',
      items: {
        type: 'object',
        required: ['name', 'title', 'groups'],
        additionalProperties: false,
        properties: {
          name,
          title: text,
          groups: {
            type: 'array',
            items: {
              type: 'object',
              required: ['actions'],
              additionalProperties: false,
              properties: {
                axis: name,
                actions: {
                  type: 'array',
                  items: {
                    type: 'object',
                    required: ['verb', 'ref'],
                    additionalProperties: false,
                    properties: {
                      verb: { enum: ['remove', 'inspect', 'clean', 'refit'] },
                      ref: name,
                      for: text,
                      text,
                    },
                  },
                },
              },
            },
          },
        },
      },
    },
  },
};
