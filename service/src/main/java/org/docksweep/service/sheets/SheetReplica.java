package org.docksweep.service.sheets;

import com.zaxxer.hikari.HikariDataSource;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.TimeUnit;
import javax.sql.DataSource;
import org.docksweep.contract.ApiPaths;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.Environment;
import org.springframework.jdbc.datasource.DelegatingDataSource;
import org.springframework.jdbc.datasource.LazyConnectionDataSourceProxy;
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
    private static final long WAIT_MS = 2_000;
    private static final long AGAIN_AFTER_S = 30;
    private static final ThreadLocal<Boolean> SHEET = ThreadLocal.withInitial(() -> false);

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
        // Told when it does not answer, not waited for; see ReplicaWhileItAnswers.
        replica.setConnectionTimeout(WAIT_MS);
        replica.setInitializationFailTimeout(-1);
        return replica;
    }

    private static DataSource routed(HikariDataSource main, HikariDataSource replica) {
        DataSource reads = new ReplicaWhileItAnswers(main, replica);
        LazyConnectionDataSourceProxy lazy = new LazyConnectionDataSourceProxy();
        lazy.setTargetDataSource(main);
        lazy.setReadOnlyDataSource(reads);
        lazy.afterPropertiesSet();
        return new ClosingBoth(lazy, main, replica);
    }

    /** A replica that does not answer is left alone for a while; sheets then come from the main database. */
    private static final class ReplicaWhileItAnswers extends DelegatingDataSource {
        private static final Logger LOG = LoggerFactory.getLogger(SheetReplica.class);

        private final HikariDataSource replica;
        private volatile long leftAloneUntil = System.nanoTime();

        ReplicaWhileItAnswers(HikariDataSource main, HikariDataSource replica) {
            super(main);
            this.replica = replica;
        }

        @Override
        public Connection getConnection() throws SQLException {
            if (SHEET.get() && System.nanoTime() - leftAloneUntil >= 0) {
                try {
                    return replica.getConnection();
                } catch (SQLException e) {
                    leftAloneUntil = System.nanoTime() + TimeUnit.SECONDS.toNanos(AGAIN_AFTER_S);
                    LOG.warn(
                            "the replica does not answer; sheets come from the main database for {} s",
                            AGAIN_AFTER_S,
                            e);
                }
            }
            return super.getConnection();
        }
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
