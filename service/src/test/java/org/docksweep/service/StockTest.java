package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchActionBody.Verb;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.OrderList;
import org.docksweep.contract.Page;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.PartUnit;
import org.docksweep.contract.Problem;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.StockMove;
import org.docksweep.contract.StockMoveBody;
import org.docksweep.fleet.Part;
import org.docksweep.fleet.PartKind;
import org.docksweep.fleet.PartSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import tools.jackson.core.type.TypeReference;

/** Stock of parts: what is there, what moves it, what to order. */
@ExtendWith(RunningService.class)
class StockTest {
    private final Api api;

    StockTest(Api api) {
        this.api = api;
    }

    private BenchDesk inRepair() {
        return BenchDesk.withJob(api).act(Verb.ACCEPT, Verb.START_REPAIR);
    }

    private void assertNothingHappened(BenchDesk desk, Part part, int stock) {
        assertThat(desk.inStock(part)).isEqualTo(stock);
        assertThat(desk.file().exchanges()).isEmpty();
        assertThat(desk.at("HF").diaphragmSerial()).isEqualTo("D" + desk.tag);
        assertThat(desk.history()).noneMatch(e -> e.kind() == HistoryEvent.Kind.INSTALLED);
    }

    @Test
    void neverLetsTheStockGoBelowZero() {
        BenchDesk desk = inRepair();
        Part plain = desk.part("A-" + desk.tag, PartKind.DIAPHRAGM, List.of("REED-1"), 8.0, false);

        Api.Answer refused = desk.exchange(desk.newDiaphragm(plain, "D" + desk.tag, null));
        Api.Answer scrapped = desk.move(plain, StockMoveBody.Kind.SCRAPPED, 1);

        assertThat(refused.problem().detail()).isEqualTo("part A-" + desk.tag + ": 0 in stock, 1 wanted");
        assertThat(scrapped.problem().type()).isEqualTo(ProblemTypes.WRONG_STATE);
        assertNothingHappened(desk, plain, 0);
    }

    @Test
    void takesTheLastPieceOnceWhenTwoBenchesReachForIt() throws Exception {
        BenchDesk one = inRepair();
        BenchDesk two = inRepair();
        Part plain = one.part("L-" + one.tag, PartKind.DIAPHRAGM, List.of("REED-1"), 8.0, false);
        one.receive(plain, 1);
        PartExchangeBody first = one.newDiaphragm(plain, "D" + one.tag, null);
        PartExchangeBody second = two.newDiaphragm(plain, "D" + two.tag, null);
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try {
            CyclicBarrier start = new CyclicBarrier(2);
            Future<Api.Answer> a = threads.submit(() -> {
                start.await(10, TimeUnit.SECONDS);
                return one.exchange(first);
            });
            Future<Api.Answer> b = threads.submit(() -> {
                start.await(10, TimeUnit.SECONDS);
                return two.exchange(second);
            });
            assertThat(List.of(a.get(60, TimeUnit.SECONDS), b.get(60, TimeUnit.SECONDS)))
                    .extracting(Api.Answer::status)
                    .containsExactlyInAnyOrder(201, 409);
        } finally {
            threads.shutdownNow();
        }
        assertThat(one.inStock(plain)).isZero();
        assertThat(one.file().exchanges().size() + two.file().exchanges().size())
                .isEqualTo(1);
    }

    @Test
    void listsWhatToOrderWithTheJobsThatWaitForIt() {
        BenchDesk desk = BenchDesk.withJob(api).act(Verb.ACCEPT);
        desk.receive(desk.diaphragm, 2, "O-1", "O-2");
        assertThat(order(desk)).as("two in stock, level one: nothing to order").isNull();

        BenchDesk.expect(201, desk.send(desk.action(Verb.WAIT_FOR_PART, BenchDesk.BENCH, desk.diaphragm.number())));

        assertThat(desk.job().waitsForPart()).isEqualTo(desk.diaphragm.number());
        assertThat(order(desk))
                .isEqualTo(new OrderList.Row(
                        desk.diaphragm.number(),
                        desk.diaphragm.name(),
                        PartSource.ORIGINAL,
                        2,
                        1,
                        4,
                        6200,
                        List.of(desk.code)));
        desk.act(Verb.START_REPAIR);
        assertThat(order(desk)).isNull();
    }

    @Test
    void booksMovesOnceAndReadsThemNewestFirst() {
        BenchDesk desk = BenchDesk.withJob(api);
        Part gasket = desk.part("G-" + desk.tag, PartKind.SEAL, List.of(), null, false);
        StockMoveBody in = new StockMoveBody(
                UUID.randomUUID(),
                gasket.number(),
                BenchDesk.now(),
                BenchDesk.BY,
                StockMoveBody.Kind.RECEIVED,
                10,
                List.of(),
                null);
        String path = ApiPaths.STOCK_MOVES + "/" + in.id();
        assertThat(api.put(path, in).status()).isEqualTo(201);
        assertThat(api.put(path, in).status()).isEqualTo(200);
        desk.move(gasket, StockMoveBody.Kind.SCRAPPED, 3);
        desk.move(gasket, StockMoveBody.Kind.COUNTED, 6);

        List<StockMove> moves = new ArrayList<>();
        String after = "";
        do {
            Page<StockMove> page = api.get(
                            ApiPaths.PARTS + "/" + gasket.number() + ApiPaths.MOVES + "?limit=2&after=" + after)
                    .as(new TypeReference<Page<StockMove>>() {});
            moves.addAll(page.items());
            after = page.next();
        } while (after != null);

        assertThat(moves).extracting(StockMove::change).containsExactly(-1, -3, 10);
        assertThat(moves).extracting(StockMove::stockAfter).containsExactly(6, 7, 10);
        assertThat(desk.inStock(gasket)).isEqualTo(6);
    }

    @Test
    void refusesAMoveInTheFutureOrOfNothingOrWithMoreSerialsThanPieces() {
        BenchDesk desk = BenchDesk.withJob(api);
        StockMoveBody wrong = new StockMoveBody(
                UUID.randomUUID(),
                desk.diaphragm.number(),
                BenchDesk.now().plusSeconds(86_400),
                BenchDesk.BY,
                StockMoveBody.Kind.RECEIVED,
                0,
                List.of("A", "A"),
                null);

        Api.Answer refused = api.put(ApiPaths.STOCK_MOVES + "/" + wrong.id(), wrong);

        assertThat(refused.problem().errors())
                .extracting(Problem.Entry::column)
                .containsExactlyInAnyOrder("at", "quantity", "serials", "serials[1]");
        assertThat(desk.inStock(desk.diaphragm)).isZero();
    }

    @Test
    void countsNoShelfBelowThePiecesKnownBySerial() {
        BenchDesk desk = BenchDesk.withJob(api);
        desk.receive(desk.diaphragm, 2, "Q-1", "Q-2");

        Api.Answer refused = desk.move(desk.diaphragm, StockMoveBody.Kind.COUNTED, 1);
        BenchDesk.expect(201, desk.move(desk.diaphragm, StockMoveBody.Kind.SCRAPPED, 1, "Q-1"));

        assertThat(refused.problem().detail()).contains("2 pieces are in stock by serial");
        assertThat(desk.stock(desk.diaphragm).units())
                .extracting(PartUnit::serial, PartUnit::state)
                .containsExactlyInAnyOrder(
                        org.assertj.core.groups.Tuple.tuple("Q-1", PartUnit.State.SCRAPPED),
                        org.assertj.core.groups.Tuple.tuple("Q-2", PartUnit.State.IN_STOCK));
    }

    private OrderList.Row order(BenchDesk desk) {
        return api.get(ApiPaths.PART_ORDERS).as(OrderList.class).rows().stream()
                .filter(r -> r.partNumber().equals(desk.diaphragm.number()))
                .findFirst()
                .orElse(null);
    }
}
