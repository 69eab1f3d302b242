package org.docksweep.service;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_16;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.ImportReceipt;
import org.docksweep.contract.Page;
import org.docksweep.contract.Problem;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.ReturnList;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.core.type.TypeReference;

@ExtendWith(RunningService.class)
class ImportsTest {
    private static final String CSV = "text/csv";
    private static final int MOST_LINES = 100_000;

    private final Api api;
    private final String model;

    ImportsTest(Api api) {
        this.api = api;
        this.model = House.newModel(api);
    }

    private Api.Answer cabinets(String text) {
        return api.postBytes(ApiPaths.CABINETS_IMPORT, text.getBytes(UTF_8), CSV);
    }

    private boolean exists(AssetTag tag) {
        return api.get(ApiPaths.CABINETS + "/" + tag).status() == 200;
    }

    @Test
    void importsCabinetsOnceHoweverOftenTheFileIsSent() {
        AssetTag one = House.newTag();
        AssetTag two = House.newTag();
        String file = "\uFEFFtag,model,shelf_place,status\r\n" + one + "," + model + ",\"C, 04\",\r\n" + two + ","
                + model + ",,OUT\r\n";

        assertThat(cabinets(file).as(ImportReceipt.class)).isEqualTo(new ImportReceipt(2, 2, 0));
        assertThat(cabinets(file).as(ImportReceipt.class)).isEqualTo(new ImportReceipt(2, 0, 2));
        assertThat(api.get(ApiPaths.CABINETS + "/" + one).as(CabinetBody.class).shelfPlace())
                .isEqualTo("C, 04");
        assertThat(api.get(ApiPaths.CABINETS + "/" + two).as(CabinetBody.class).status())
                .isEqualTo(CabinetStatus.OUT);
    }

    @Test
    void takesDaysOfSafetyTestsOfPoweredCabinetsAndNamesWrongOnes() {
        String powered = House.newPoweredModel(api);
        AssetTag one = House.newTag();
        AssetTag two = House.newTag();
        String head = "tag,model,safety_test_due\n";

        Api.Answer wrong = cabinets(head + one + "," + powered + ",31.3.2027\n" + two + "," + model + ",2027-03-31\n");
        assertThat(wrong.status()).isEqualTo(400);
        assertThat(wrong.text()).contains("2027-03-31").contains("only powered cabinets");
        assertThat(exists(one)).isFalse();

        assertThat(cabinets(head + one + "," + powered + ",2027-03-31\n" + two + "," + model + ",\n")
                        .as(ImportReceipt.class))
                .isEqualTo(new ImportReceipt(2, 2, 0));
        assertThat(api.get(ApiPaths.CABINETS + "/" + one).as(CabinetBody.class).safetyTestDue())
                .isEqualTo(java.time.LocalDate.parse("2027-03-31"));
    }

    @Test
    void readsSemicolonsAsSpreadsheetsOfManyCountriesWriteThem() {
        AssetTag tag = House.newTag();
        assertThat(cabinets("model;tag\n" + model + ";" + tag + "\n").as(ImportReceipt.class))
                .isEqualTo(new ImportReceipt(1, 1, 0));
        assertThat(exists(tag)).isTrue();
    }

    @Test
    void namesEveryWrongLineAndStoresNothing() {
        AssetTag good = House.newTag();
        AssetTag twice = House.newTag();
        String file = "tag,model,shelf_place\n" + good + "," + model + ",A-01\n" + "nonsense," + model + ",A-02\n"
                + twice + "," + model + ",A-03\n" + twice + "," + model + ",A-04\n" + House.newTag()
                + ",NO-MODEL,A-05\n"
                + House.newTag() + "," + model + "\n";

        Problem problem = cabinets(file).problem();

        assertThat(problem.type()).isEqualTo(ProblemTypes.IMPORT_ERRORS);
        assertThat(problem.errors()).extracting(Problem.Entry::line).containsExactly(3, 5, 6, 7);
        assertThat(problem.errors()).extracting(Problem.Entry::column).containsExactly("tag", "tag", "model", null);
        assertThat(problem.errors().get(1).message()).contains("line 4");
        assertThat(exists(good)).isFalse();
        assertThat(exists(twice)).isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"tag,kind\n", "tag\n", "tag,model,tag\n", "", "\n\n"})
    void saysWhichColumnsAreExpected(String header) {
        Problem problem = cabinets(header).problem();

        assertThat(problem.type()).isEqualTo(ProblemTypes.IMPORT_ERRORS);
        assertThat(problem.errors()).singleElement().satisfies(e -> {
            assertThat(e.line()).isEqualTo(1);
            assertThat(e.message()).contains("tag, model", "shelf_place, status");
        });
    }

    @Test
    void namesTheEncodingOfAFileThatIsNotUtf8() {
        String file = "tag,model,shelf_place\n" + House.newTag() + "," + model + ",Süd\n";

        Problem latin = api.postBytes(ApiPaths.CABINETS_IMPORT, file.getBytes(ISO_8859_1), CSV)
                .problem();
        Problem wide = api.postBytes(ApiPaths.CABINETS_IMPORT, file.getBytes(UTF_16), CSV)
                .problem();
        Problem bare = api.postBytes(ApiPaths.CABINETS_IMPORT, file.getBytes(UTF_16LE), CSV)
                .problem();
        Problem declared = api.postBytes(ApiPaths.CABINETS_IMPORT, file.getBytes(UTF_8), "text/csv;charset=IBM500")
                .problem();

        assertThat(List.of(latin, wide, bare, declared))
                .allSatisfy(p -> assertThat(p.type()).isEqualTo(ProblemTypes.UNREADABLE))
                .allSatisfy(p -> assertThat(p.hint()).contains("UTF-8"));
        assertThat(latin.detail()).contains("line 2", "0xFC", "Windows-1252");
        assertThat(wide.detail()).contains("UTF-16");
        assertThat(bare.detail()).contains("UTF-16");
        assertThat(declared.detail()).contains("IBM500");
    }

    @Test
    void refusesAQuoteThatIsNeverClosed() {
        assertThat(cabinets("tag,model\n\"MCH-1,x\n").problem().type()).isEqualTo(ProblemTypes.UNREADABLE);
    }

    @Test
    void refusesOneLineMoreThanAllowed() {
        StringBuilder file = new StringBuilder("tag,model\n");
        for (int i = 0; i <= MOST_LINES; i++) {
            file.append("ZZ-").append(1_000_000 + i).append(',').append(model).append('\n');
        }
        Problem problem = cabinets(file.toString()).problem();

        assertThat(problem.errors()).singleElement().satisfies(e -> {
            assertThat(e.line()).isEqualTo(MOST_LINES + 2);
            assertThat(e.message()).contains("100000");
        });
    }

    @Test
    void importsReturnListsByOrderOnceHoweverOftenTheFileIsSent() {
        AssetTag one = House.newCabinet(api, model, CabinetStatus.READY);
        AssetTag two = House.newCabinet(api, model, CabinetStatus.READY);
        String order = "A-" + House.next();
        String other = "A-" + House.next();
        String file = "order_number,customer,due_on,tag\n" + order + ",Harbour Players,2026-03-14," + one + "\n" + order
                + ",Harbour Players,2026-03-14," + two + "\n" + other + ",Dune Festival,2026-03-15," + one + "\n";

        assertThat(lists(file).as(ImportReceipt.class)).isEqualTo(new ImportReceipt(3, 2, 0));
        assertThat(lists(file).as(ImportReceipt.class)).isEqualTo(new ImportReceipt(3, 0, 2));
        assertThat(all())
                .filteredOn(l -> l.orderNumber().equals(order))
                .singleElement()
                .satisfies(l ->
                        assertThat(l.lines()).extracting(ReturnList.Line::tag).containsExactly(one, two));
        assertThat(api.get(ApiPaths.CABINETS + "/" + one).as(CabinetBody.class).status())
                .isEqualTo(CabinetStatus.OUT);
    }

    private Api.Answer lists(String file) {
        return api.postBytes(ApiPaths.RETURN_LISTS_IMPORT, file.getBytes(UTF_8), CSV);
    }

    private List<ReturnList> all() {
        return api.get(ApiPaths.RETURN_LISTS + "?limit=1000")
                .as(new TypeReference<Page<ReturnList>>() {})
                .items();
    }

    @Test
    void namesEveryWrongLineOfAReturnListAndStoresNothing() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
        String order = "A-" + House.next();
        String file = "order_number,customer,due_on,tag\n" + order + ",Harbour Players,14.3.2026," + tag + "\n" + order
                + ",Harbour Players,2026-03-14," + tag + "\n" + order + ",Harbour Players,2026-03-14," + tag + "\n"
                + order + ",Others,2026-03-14," + House.newTag() + "\n";

        Problem problem = lists(file).problem();

        assertThat(problem.errors())
                .extracting(Problem.Entry::line, Problem.Entry::column)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(2, "due_on"),
                        org.assertj.core.groups.Tuple.tuple(4, "tag"),
                        org.assertj.core.groups.Tuple.tuple(5, "order_number"),
                        org.assertj.core.groups.Tuple.tuple(5, "tag"));
        assertThat(all()).noneMatch(l -> l.orderNumber().equals(order));
    }
}
