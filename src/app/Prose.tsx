import { memo, useMemo, type ReactNode } from 'react';
import type { Build } from '../installation/index.ts';
import { fill, readProse, type Span } from '../lesson/index.ts';
import { useVocabulary } from './useDesk.ts';

/** A lesson's prose with its numbers computed. */
export const Prose = memo(function Prose({
  build,
  text,
  given,
}: {
  readonly build: Build;
  readonly text: string;
  /** Conditions under which the numbers hold. */
  readonly given: readonly string[];
}) {
  const vocabulary = useVocabulary();
  const blocks = useMemo(() => readProse(fill(build, text, given, vocabulary)), [build, text, given, vocabulary]);
  return (
    <div className="prose">
      {blocks.map((block, index) =>
        block.kind === 'list' ? (
          <ul key={index}>
            {block.items.map((item, one) => (
              <li key={one}>{spans(item)}</li>
            ))}
          </ul>
        ) : block.kind === 'heading' ? (
          <h3 key={index}>{spans(block.spans)}</h3>
        ) : (
          <p key={index}>{spans(block.spans)}</p>
        ),
      )}
    </div>
  );
});

function spans(parts: readonly Span[]): readonly ReactNode[] {
  return parts.map(({ kind, text }, index) =>
    kind === 'strong' ? <strong key={index}>{text}</strong> : kind === 'emphasis' ? <em key={index}>{text}</em> : text,
  );
}
