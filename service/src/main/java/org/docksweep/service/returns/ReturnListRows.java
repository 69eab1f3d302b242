package org.docksweep.service.returns;

import jakarta.persistence.LockModeType;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Lock;
import org.springframework.data.jpa.repository.Query;

interface ReturnListRows extends JpaRepository<ReturnListRow, UUID> {
    List<ReturnListRow> findByIdGreaterThanOrderById(UUID after, Limit limit);

    List<ReturnListRow> findAllByOrderById(Limit limit);

    List<ReturnListRow> findByClosedAtIsNullOrderByDueOnAscIdAsc();

    @Lock(LockModeType.PESSIMISTIC_WRITE)
    @Query("select l from ReturnListRow l where l.id = :id")
    Optional<ReturnListRow> findLocked(UUID id);

    @Query("select l from ReturnListRow l join l.lines n where n.tag = :tag order by l.storedAt desc, l.id")
    List<ReturnListRow> with(String tag);

    /** Cabinets of open lists that are still out, by model and day due. */
    @Query(
            nativeQuery = true,
            value = "select line.model_code as model_code, list.due_on as due_on, count(*) as units"
                    + " from return_list list join return_list_line line on line.return_list_id = list.id"
                    + " join cabinet on cabinet.tag = line.tag"
                    + " where list.closed_at is null and cabinet.status = 'OUT'"
                    + " group by line.model_code, list.due_on order by list.due_on")
    List<Due> stillOut();

    /** Units of a model due on a day. */
    interface Due {
        String getModelCode();

        LocalDate getDueOn();

        long getUnits();
    }
}
