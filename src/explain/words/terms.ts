/** The trade words that differ between the two vocabularies; in a message `{rod}` is the word, `{Rod}` the word at the head of a sentence. */
export interface Terms {
  readonly line: string;
  readonly protective: string;
  readonly protectiveFormal: string;
  readonly bond: string;
  readonly bondFormal: string;
  readonly serviceNeutral: string;
  readonly rod: string;
  readonly electrode: string;
  readonly breaker: string;
  readonly residual: string;
  readonly residualDevice: string;
  readonly panel: string;
  readonly outlet: string;
  readonly earthBar: string;
  readonly drop: string;
  readonly cord: string;
  readonly leg: string;
  readonly ground: string;
  readonly earthed: string;
  readonly codes: string;
  readonly electrician: string;
}
