/** Practice: an invented truck on the virtual rig, in a folder that goes when practice ends. Knows no service and no widgets. */
package org.docksweep.kiosk.practice;
