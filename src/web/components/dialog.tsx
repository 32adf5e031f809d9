// A sheet of paper laid over the page, for a form that belongs to it. Escape puts it away.

import type { ReactNode } from 'react';
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { words } from '../words/index.ts';
import { Button } from './button.tsx';
import './dialog.css';

export interface DialogProps {
  readonly title: string;
  readonly open: boolean;
  readonly onClose: () => void;
  /** `wide` for forms in two columns. */
  readonly width?: 'narrow' | 'wide';
  readonly children: ReactNode;
}

export function Dialog({ title, open, onClose, width = 'narrow', children }: DialogProps) {
  return (
    <ModalOverlay
      isOpen={open}
      onOpenChange={(isOpen) => {
        if (!isOpen) onClose();
      }}
      className="veil"
    >
      <Modal className={`sheet sheet-${width}`}>
        <AriaDialog className="sheet-inside">
          <header className="sheet-head">
            <Heading slot="title" className="sheet-title">
              {title}
            </Heading>
            <Button kind="plain" onPress={onClose}>
              {words.frame.close}
            </Button>
          </header>
          {children}
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}
