package org.docksweep.service.description;

import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.PathItem;
import io.swagger.v3.oas.models.SpecVersion;
import io.swagger.v3.oas.models.examples.Example;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.JsonSchema;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.responses.ApiResponses;
import io.swagger.v3.oas.models.security.SecurityRequirement;
import io.swagger.v3.oas.models.security.SecurityScheme;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.Problem;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Says of every operation how it refuses (RFC 9457), which statuses it has, and gives examples. */
@Configuration(proxyBeanMethods = false)
@ConditionalOnProperty(name = "springdoc.api-docs.enabled", havingValue = "true")
class Description {
    private static final String TOKEN = "token";
    private static final String PROBLEM = "#/components/schemas/Problem";

    @Bean
    OpenApiCustomizer refusalsAndExamples() {
        return api -> {
            describe(api);
            Examples examples = Examples.read();
            api.getPaths()
                    .forEach((path, item) -> item.readOperationsMap()
                            .forEach((method, operation) -> describe(method, path, operation, examples)));
        };
    }

    private static void describe(OpenAPI api) {
        api.setSpecVersion(SpecVersion.V31);
        api.setOpenapi("3.1.0");
        api.setInfo(new Info()
                .title("Docksweep service")
                .version("1")
                .description("Paths and bodies stay readable by kiosks of earlier versions: fields are added, none is"
                        + " taken away or given another meaning. What cannot be done so gets a new path."));
        Components components = api.getComponents() == null ? new Components() : api.getComponents();
        components.addSecuritySchemes(
                TOKEN, new SecurityScheme().type(SecurityScheme.Type.HTTP).scheme("bearer"));
        components.addSchemas("Problem", problem());
        api.setComponents(components);
        api.addSecurityItem(new SecurityRequirement().addList(TOKEN));
    }

    private static Schema<?> problem() {
        Schema<?> entry = object(Map.of(
                "line", typed("integer", "line of the file, from 1"),
                "column", typed("string", "column of the file or field of the body"),
                "message", typed("string", "what is wrong and what was expected")));
        Map<String, Schema<?>> properties = new LinkedHashMap<>();
        properties.put("type", typed("string", "one of " + String.join(", ", Refusals.types())));
        properties.put("title", typed("string", "what kind of problem"));
        properties.put("status", typed("integer", "HTTP status"));
        properties.put("detail", typed("string", "what is wrong this time"));
        properties.put("instance", typed("string", "path that was asked for"));
        properties.put("field", typed("string", "field or parameter concerned"));
        properties.put("hint", typed("string", "what to do next"));
        Schema<?> errors = typed("array", "all errors found");
        errors.setItems(entry);
        properties.put("errors", errors);
        Schema<?> problem = object(properties);
        problem.setDescription("Problem details, RFC 9457");
        problem.setRequired(List.of("type", "title", "status", "detail"));
        return problem;
    }

    private static Schema<?> object(Map<String, Schema<?>> properties) {
        Schema<?> schema = typed("object", null);
        properties.forEach(schema::addProperty);
        return schema;
    }

    private static Schema<?> typed(String type, String words) {
        Schema<?> schema = new JsonSchema();
        schema.setType(type);
        schema.addType(type);
        schema.setDescription(words);
        return schema;
    }

    private static void describe(PathItem.HttpMethod method, String path, Operation operation, Examples examples) {
        ApiResponses responses = operation.getResponses();
        ApiResponse ok = responses.get("200");
        if (ok != null) {
            ok.setDescription("Done");
            if (method == PathItem.HttpMethod.PUT || path.equals(ApiPaths.SIGN_ONS)) {
                ok.setDescription("Stored before, or changed");
                responses.addApiResponse(
                        "201", new ApiResponse().description("Stored").content(ok.getContent()));
            }
        }
        boolean hasBody = operation.getRequestBody() != null;
        Refusals.of(method.name(), path, hasBody)
                .forEach((status, types) -> responses.addApiResponse(Integer.toString(status), refusal(path, types)));
        examples.addTo(method.name() + " " + path, operation);
    }

    private static ApiResponse refusal(String path, List<String> types) {
        Schema<?> schema = new JsonSchema();
        schema.set$ref(PROBLEM);
        MediaType media = new MediaType().schema(schema);
        types.forEach(type -> media.addExamples(name(type), example(path, type)));
        return new ApiResponse()
                .description(
                        types.stream().map(type -> Refusals.of(type).words()).collect(Collectors.joining(" ")))
                .content(new Content().addMediaType(Problem.MEDIA_TYPE, media));
    }

    private static Example example(String path, String type) {
        Refusals.Kind kind = Refusals.of(type);
        Map<String, Object> value = new LinkedHashMap<>();
        value.put("type", type);
        value.put("title", kind.title());
        value.put("status", kind.status());
        value.put("detail", kind.words());
        value.put("instance", path);
        return new Example().summary(kind.title()).value(value);
    }

    private static String name(String type) {
        return type.substring(type.lastIndexOf('/') + 1);
    }
}
