export declare const courseUnitTable: import("./column.ts").TableDescription<"courseUnit">;
