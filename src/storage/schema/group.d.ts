export declare const groupTable: import("./column.ts").TableDescription<"group">;
