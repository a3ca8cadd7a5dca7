/** One picture on the sheet. */
export interface Shot {
  readonly group: string;
  readonly label: string;
  /** Beside the sheet. */
  readonly file: string;
}

/** A page with all pictures, grouped, each a link to itself at full size. */
export function contactSheet(shots: readonly Shot[]): string {
  const groups = [...new Set(shots.map(({ group }) => group))];
  const sections = groups.map((group) => {
    const figures = shots
      .filter((shot) => shot.group === group)
      .map(
        ({ label, file }) =>
          `<figure><a href="${file}"><img src="${file}" alt="${group}, ${label}" loading="lazy"></a><figcaption>${label}</figcaption></figure>`,
      );
    return `<section><h2>${group}</h2><div>${figures.join('')}</div></section>`;
  });
  return `<!doctype html><html lang="en"><meta charset="utf-8"><title>Every screen</title><style>
body{font:16px/1.4 sans-serif;margin:24px;background:#eee;color:#222}section div{display:flex;flex-wrap:wrap;gap:16px;align-items:flex-start}
figure{margin:0}img{width:300px;height:auto;max-height:420px;object-fit:cover;object-position:top;border:1px solid #999}</style><h1>Every screen</h1>${sections.join('')}</html>`;
}
