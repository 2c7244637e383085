const REFERENCES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/**
 * A text as it stands in HTML, between tags or in a quoted attribute: parsed, it is the
 * text again, but for what `parsedAsWritten` says.
 */
export function escapeText(text: string): string {
  return parsedAsWritten(
    text.replace(/[&<>"']/g, (character) => REFERENCES[character] ?? character),
  );
}

/**
 * Markup without the characters that a parser would change or drop (HTML standard, 13.2.3.5):
 * a carriage return is written as a reference; U+FFFD stands for what no HTML document can
 * hold, the null character and halves of surrogate pairs.
 */
export function parsedAsWritten(markup: string): string {
  return markup.replace(/\0|\p{Cs}/gu, '\uFFFD').replaceAll('\r', '&#13;');
}
