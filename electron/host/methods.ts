import type { Input, MethodName, Output } from "../contract.ts";

/** The functions behind the contract: input already held to its schema, paths and disks on this side. */
export type Methods = {
  readonly [Name in MethodName]: (input: Input<Name>) => Promise<Output<Name>>;
};
