import { toJsonSchema } from '@valibot/to-json-schema';
import { benchLessonSchema, lessonSchema } from '../lesson/file.ts';

/**
 * The JSON Schema of lesson files, from the very schema that reads them, for editors that complete and check while one writes. Rules
 * that join several keys are not in it: `midwater check` has them.
 */
export function lessonJsonSchema(): object {
  // Blanks around a text are dropped by the reader; a JSON Schema has no word for it.
  const [flown, atBench] = [lessonSchema, benchLessonSchema].map((one) =>
    toJsonSchema(one, { typeMode: 'input', ignoreActions: ['trim'] }),
  );
  const { $schema, ...first } = flown!;
  const { $schema: _same, ...second } = atBench!;
  return { $schema, title: 'A lesson of Midwater', anyOf: [first, second] };
}
