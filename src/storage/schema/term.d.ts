export declare const termTable: import("./column.ts").TableDescription<"term">;
