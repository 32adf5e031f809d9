export declare const eventTable: import("./column.ts").TableDescription<"event">;
