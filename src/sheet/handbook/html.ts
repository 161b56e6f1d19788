/** Text as markup that shows it. */
export const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

/** An element that holds nothing but text. */
export const tag = (name: string, text: string, className?: string): string => `<${name}${className === undefined ? '' : ` class="${className}"`}>${escaped(text)}</${name}>`;
