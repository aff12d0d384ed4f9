/** The sentence with its numbers kept beside their units where it breaks. */
export function unbroken(sentence: string): string {
  return sentence
    .replace(/(\d) (?=(m|cm|mm|s|kg|kgf|N|L|bar|psi|ft|lb|%)(\W|$))/g, '$1\u00a0')
    .replace(/(\d\u00a0N) (?=s(\W|$))/g, '$1\u00a0');
}
