/** A plain object of which only that is known: what came as JSON. */
export type Fields = Readonly<Record<string, unknown>>;

/** Whether a value has fields by name: an object, and no list. */
export const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
