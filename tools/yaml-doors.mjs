/**
 * Which reader checks a YAML file of the program's own while it becomes a module: by where the file lies, the door of the
 * room that reads it and the function there, which returns plain data or throws all problems with their lines.
 * @type {readonly { readonly place: RegExp; readonly door: string; readonly reader: string }[]}
 */
export const yamlDoors = [
  { place: /\/src\/diver\/setups\//, door: '../src/diver/file.ts', reader: 'loadSetupText' },
  { place: /\/lessons\/bench\//, door: '../src/lesson/file.ts', reader: 'loadBenchLessonText' },
  { place: /\/lessons\//, door: '../src/lesson/file.ts', reader: 'loadLessonText' },
];
