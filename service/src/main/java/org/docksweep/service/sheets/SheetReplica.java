package org.docksweep.service.sheets;

import com.zaxxer.hikari.HikariDataSource;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import javax.sql.DataSource;
import org.docksweep.contract.ApiPaths;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.Environment;
import org.springframework.jdbc.datasource.DelegatingDataSource;
import org.springframework.jdbc.datasource.LazyConnectionDataSourceProxy;
import org.springframework.jdbc.datasource.lookup.AbstractRoutingDataSource;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * Sheets from a read-only replica, when {@code docksweep.database.replica-url} names one: they read a lot, and a second
 * behind is no matter on paper. Only read-only transactions of the addresses below go there; whatever writes, and
 * whatever a kiosk reads back right after it wrote, stays at the main database.
 */
@Configuration(proxyBeanMethods = false)
@ConditionalOnProperty(name = "docksweep.database.replica-url", matchIfMissing = false)
class SheetReplica {
    private static final String[] SHEETS = {
        ApiPaths.FLEET_STATUS,
        ApiPaths.RETURN_LISTS + "/*" + ApiPaths.REPORT,
        ApiPaths.PART_ORDERS,
        ApiPaths.RELIABILITY,
        ApiPaths.DRIFT_WATCH,
        ApiPaths.DOCK_CONFUSION,
        ApiPaths.PART_LIVES
    };
    private static final int MOST_CONNECTIONS = 5;
    private static final ThreadLocal<Boolean> SHEET = ThreadLocal.withInitial(() -> false);

    private enum Side {
        MAIN,
        REPLICA
    }

    @Bean
    static BeanPostProcessor sheetsFromTheReplica(Environment environment) {
        return new BeanPostProcessor() {
            @Override
            public Object postProcessAfterInitialization(Object bean, String name) {
                return bean instanceof HikariDataSource main && name.equals("dataSource")
                        ? routed(main, replica(main, environment.getRequiredProperty("docksweep.database.replica-url")))
                        : bean;
            }
        };
    }

    /** With the main database's account; it needs no more than to read. */
    private static HikariDataSource replica(HikariDataSource main, String url) {
        HikariDataSource replica = new HikariDataSource();
        replica.setPoolName("sheets");
        replica.setJdbcUrl(url);
        replica.setUsername(main.getUsername());
        replica.setPassword(main.getPassword());
        replica.setReadOnly(true);
        replica.setMaximumPoolSize(MOST_CONNECTIONS);
        return replica;
    }

    private static DataSource routed(HikariDataSource main, HikariDataSource replica) {
        AbstractRoutingDataSource reads = new AbstractRoutingDataSource() {
            @Override
            protected Object determineCurrentLookupKey() {
                return SHEET.get() ? Side.REPLICA : Side.MAIN;
            }
        };
        reads.setTargetDataSources(java.util.Map.of(Side.MAIN, main, Side.REPLICA, replica));
        reads.setDefaultTargetDataSource(main);
        reads.afterPropertiesSet();
        LazyConnectionDataSourceProxy lazy = new LazyConnectionDataSourceProxy();
        lazy.setTargetDataSource(main);
        lazy.setReadOnlyDataSource(reads);
        lazy.afterPropertiesSet();
        return new ClosingBoth(lazy, main, replica);
    }

    /** The container closes what it finds under the bean's name: both pools. */
    private static final class ClosingBoth extends DelegatingDataSource implements AutoCloseable {
        private final HikariDataSource main;
        private final HikariDataSource replica;

        ClosingBoth(DataSource target, HikariDataSource main, HikariDataSource replica) {
            super(target);
            this.main = main;
            this.replica = replica;
        }

        @Override
        public void close() {
            replica.close();
            main.close();
        }
    }

    @Bean
    WebMvcConfigurer markSheets() {
        HandlerInterceptor mark = new HandlerInterceptor() {
            @Override
            public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
                SHEET.set(true);
                return true;
            }

            @Override
            public void afterCompletion(
                    HttpServletRequest request, HttpServletResponse response, Object handler, Exception thrown) {
                SHEET.remove();
            }
        };
        return new WebMvcConfigurer() {
            @Override
            public void addInterceptors(InterceptorRegistry registry) {
                registry.addInterceptor(mark).addPathPatterns(SHEETS);
            }
        };
    }
}
