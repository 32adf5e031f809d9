export declare const setAsideTable: import("./column.ts").TableDescription<"setAside">;
