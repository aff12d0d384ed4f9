/** What is allowed where a text breaks the rules of YAML, by the library's code of the break. */
export function yamlAllowed(code: string): string {
  return WORDS[code]?.[0] ?? 'text that YAML can read';
}

/** What to do about it. */
export function yamlSuggestion(code: string): string {
  return WORDS[code]?.[1] ?? 'Write "key: value" on a line of its own, and put text with special characters in quotes';
}

const WORDS: Readonly<Record<string, readonly [allowed: string, suggestion: string]>> = {
  BAD_INDENT: [
    'lines of one group that begin in the same column',
    'Line it up with the keys of its group, two blanks a level',
  ],
  TAB_AS_INDENT: ['blanks before a key', 'Replace the tab by two blanks a level'],
  MISSING_CHAR: [
    'complete pairs, lists and quotes',
    'Look for a missing colon, comma, bracket or quote on this line or above',
  ],
  MULTIPLE_DOCS: ['one document in a file', 'Delete the line of three dashes or dots and keep one setup'],
  BLOCK_AS_IMPLICIT_KEY: ['one key and its value on a line', 'Put the second key on a line of its own'],
  MULTILINE_IMPLICIT_KEY: ['a key and its colon on one line', 'Add the colon, or join the two lines'],
  BLOCK_IN_FLOW: ['commas and brackets inside brackets', 'Close the bracket before, or write the list with commas'],
  BAD_SCALAR_START: ['values that begin with a letter, a digit or a quote', 'Put the value in quotes'],
  BAD_DQ_ESCAPE: ['plain text in quotes', 'Write the backslash twice, or use single quotes'],
  BAD_ALIAS: ['values written out', 'Delete the & or * and write the value out'],
  NON_STRING_KEY: ['keys that are words', 'Write the key as a word, without tags or brackets'],
  KEY_OVER_1024_CHARS: ['short keys', 'Look for a missing colon'],
  TAG_RESOLVE_FAILED: ['values without a tag', 'Delete the word that begins with an exclamation mark'],
  BAD_DIRECTIVE: ['no line that begins with a percent sign', 'Delete the line'],
  RESOURCE_EXHAUSTION: ['groups a few levels deep', 'Look for brackets that are opened and never closed'],
};
