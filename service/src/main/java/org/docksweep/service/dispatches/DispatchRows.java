package org.docksweep.service.dispatches;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;

interface DispatchRows extends JpaRepository<DispatchRow, UUID> {
    List<DispatchRow> findByIdGreaterThanOrderById(UUID after, Limit limit);

    List<DispatchRow> findAllByOrderById(Limit limit);

    List<DispatchRow> findByOutOnGreaterThanEqualOrderByOutOnAscOrderNumberAscIdAsc(LocalDate from);
}
