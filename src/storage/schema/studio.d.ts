export declare const studioTable: import("./column.ts").TableDescription<"studio">;
