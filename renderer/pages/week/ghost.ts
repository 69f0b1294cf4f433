/** A build on its way to another place: where it would stand, and whether it may. */
export interface Ghost {
  readonly buildId: string;
  readonly row: number;
  readonly setUpMin: number;
  readonly printMin: number;
  readonly doneMin: number;
  readonly endMin: number;
  readonly isAllowed: boolean;
}
