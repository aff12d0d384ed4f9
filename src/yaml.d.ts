/** A setup or lesson file, parsed when the program is built; the room that reads it checks its shape. */
declare module '*.yaml' {
  const parsed: unknown;
  export default parsed;
}
