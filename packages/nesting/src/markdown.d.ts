/** The text of a Markdown file, for the test that runs the examples in the README. */
declare module '*.md?raw' {
  const text: string;

  // biome-ignore lint/style/noDefaultExport: the bundler of the tests exports the text so.
  export { text as default };
}
