export declare const familyTable: import("./column.ts").TableDescription<"family">;
