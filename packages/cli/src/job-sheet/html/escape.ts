const REFERENCES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
  // Written as it is, a parser would make a line feed of it (HTML standard, 13.2.3.5).
  '\r': '&#13;',
};

/**
 * A text as it stands in HTML, between tags or in a quoted attribute: parsed, it is the
 * text again. U+FFFD stands for what no HTML document can hold: the null character, and
 * halves of surrogate pairs.
 */
export function escapeText(text: string): string {
  return text
    .replace(/\0|\p{Cs}/gu, '\uFFFD')
    .replace(/[&<>"'\r]/g, (character) => REFERENCES[character] ?? character);
}
