/** The file of an exhibit's card. */
export const cardName = ({ id }: { readonly id: string }): string => `${id}.svg`;
