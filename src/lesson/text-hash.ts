/** 64 bits of a text as 16 hexadecimal digits: enough to tell what one person has from each other; no secret. */
export function hashOfText(text: string): string {
  return sum(text, 0x811c9dc5) + sum(text, 0x9e3779b9);
}

/** FNV-1a, 32 bits. @source Fowler, Noll & Vo, public domain; recalled */
function sum(text: string, from: number): string {
  let hash = from;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}
