export declare const slotTable: import("./column.ts").TableDescription<"slot">;
