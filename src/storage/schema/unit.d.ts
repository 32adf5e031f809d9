export declare const unitTable: import("./column.ts").TableDescription<"unit">;
