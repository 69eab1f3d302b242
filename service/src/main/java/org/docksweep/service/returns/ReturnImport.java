package org.docksweep.service.returns;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.docksweep.contract.ImportReceipt;
import org.docksweep.contract.ReturnList;
import org.docksweep.fleet.AssetTag;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.imports.CsvTable;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Component;

/**
 * Imports return lists from CSV, one cabinet per line, all or nothing. Lines with the same order number are one list; its
 * id follows from the order number and the due date, so that the same file can be imported again.
 */
@Component
class ReturnImport {
    private static final List<String> NEEDED = List.of("order_number", "customer", "due_on", "tag");

    private final Returns returns;
    private final Fleet fleet;

    ReturnImport(Returns returns, Fleet fleet) {
        this.returns = returns;
        this.fleet = fleet;
    }

    /** Runs within the caller's transaction. */
    ImportReceipt run(byte[] file, String contentType, String by) {
        CsvTable table = CsvTable.read(file, contentType, NEEDED, Set.of());
        Map<String, Order> orders = new LinkedHashMap<>();
        Map<Integer, AssetTag> tags = tags(table);
        Map<AssetTag, Fleet.Known> known = fleet.known(new HashSet<>(tags.values()));
        for (CsvTable.Line line : table.lines()) {
            add(line, tags.get(line.number()), known, orders, table);
        }
        table.refuseIfWrong();
        int stored = 0;
        for (Order order : orders.values()) {
            stored += store(order, by, table) ? 1 : 0;
        }
        table.refuseIfWrong();
        return new ImportReceipt(table.lines().size(), stored, orders.size() - stored);
    }

    private static Map<Integer, AssetTag> tags(CsvTable table) {
        Map<Integer, AssetTag> tags = new HashMap<>();
        for (CsvTable.Line line : table.lines()) {
            try {
                tags.put(line.number(), new AssetTag(line.cell("tag")));
            } catch (IllegalArgumentException e) {
                table.error(line.number(), "tag", e.getMessage());
            }
        }
        return tags;
    }

    private static void add(
            CsvTable.Line line,
            AssetTag tag,
            Map<AssetTag, Fleet.Known> known,
            Map<String, Order> orders,
            CsvTable table) {
        String number = line.cell("order_number");
        requireText(line, "order_number", 80, table);
        requireText(line, "customer", 200, table);
        LocalDate dueOn;
        try {
            dueOn = LocalDate.parse(line.cell("due_on"));
        } catch (DateTimeParseException e) {
            table.error(
                    line.number(),
                    "due_on",
                    "\"" + CsvTable.printable(line.cell("due_on")) + "\" is not a date like 2026-03-14");
            return;
        }
        Order order = orders.computeIfAbsent(
                number, n -> new Order(n, line.cell("customer"), dueOn, line.number(), new LinkedHashMap<>()));
        if (!order.customer.equals(line.cell("customer")) || !order.dueOn.equals(dueOn)) {
            table.error(
                    line.number(),
                    "order_number",
                    "order " + CsvTable.printable(number) + " has another customer or due date in line "
                            + order.firstLine);
        }
        if (tag == null) {
            return;
        }
        if (!known.containsKey(tag)) {
            table.error(line.number(), "tag", "there is no cabinet " + tag + "; register it first");
            return;
        }
        if (order.models.putIfAbsent(tag, known.get(tag).modelCode()) != null) {
            table.error(line.number(), "tag", "tag " + tag + " is on order " + CsvTable.printable(number) + " already");
        }
    }

    private static void requireText(CsvTable.Line line, String column, int most, CsvTable table) {
        String text = line.cell(column);
        if (text.isEmpty() || text.length() > most || text.chars().anyMatch(Character::isISOControl)) {
            table.error(line.number(), column, "must be 1 to " + most + " plain characters");
        }
    }

    private boolean store(Order order, String by, CsvTable table) {
        UUID id = UUID.nameUUIDFromBytes(
                ("return list " + order.number + " due " + order.dueOn).getBytes(StandardCharsets.UTF_8));
        List<ReturnList.Line> lines = new ArrayList<>();
        order.models.forEach((tag, model) -> lines.add(new ReturnList.Line(tag, model)));
        try {
            return returns.put(id, new ReturnList(id, order.number, order.customer, order.dueOn, false, lines), by)
                    .created();
        } catch (Refusal e) {
            table.error(
                    order.firstLine,
                    "order_number",
                    "order " + CsvTable.printable(order.number) + " was imported before with other cabinets");
            return false;
        }
    }

    private record Order(
            String number, String customer, LocalDate dueOn, int firstLine, Map<AssetTag, String> models) {}
}
