package org.docksweep.demo;

import java.util.List;
import java.util.Set;
import org.docksweep.contract.DemoHouse;
import org.docksweep.demo.physics.Climate;
import org.docksweep.demo.physics.Fault;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.VisualItem;

/**
 * One cabinet on the truck.
 *
 * @param label tag it carries
 * @param unit what it really is
 * @param faults what is broken
 * @param climate how warm it is
 * @param visualDamage what the dock hand sees
 * @param truth what must become of it
 */
record TruckItem(
        AssetTag label,
        PhysicalUnit unit,
        List<Fault> faults,
        Climate climate,
        Set<VisualItem> visualDamage,
        DemoHouse.Truth truth) {}
