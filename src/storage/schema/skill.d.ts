export declare const skillTable: import("./column.ts").TableDescription<"skill">;
