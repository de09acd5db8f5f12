#include "desk/json.h"

#include "desk/json_writing.h"

namespace undersheet::desk {
namespace {

using entry::Value;

Value side_value(const SettleSideLine& side) {
    Value object;
    object.set("entry", side.entry).set("by", side.by).set("when", side.when);
    object.set("device", side.device).set("says", side.says);
    return object;
}

Value item_value(const SettleLine& item, const JobName& job) {
    Value object;
    object.set("job", job.ref).set("id", item.id).set("about", item.about).set("says", item.says);
    object.set("holds", item.holds).set("open", item.open).set("sides", rows_of(item.sides, side_value));
    put(object, "part", item.part);
    put(object, "place", item.place);
    put(object, "kind", item.kind);
    put(object, "field", item.field);
    put(object, "kept", item.kept);
    put(object, "why", item.why);
    put(object, "settled_by", item.settled_by);
    put(object, "settled_at", item.settled_at);
    return object;
}

Value supplement_value(const SupplementLine& line) {
    Value object;
    object.set("job", line.job.ref).set("supplement", line.number).set("why", line.why);
    object.set("opened", line.opened_at).set("opened_by", line.opened_by);
    object.set("open", line.signed_at.empty()).set("entries", count_of(line.entries));
    put(object, "complaint", line.complaint);
    put(object, "signed", line.signed_at);
    put(object, "signed_by", line.signed_by);
    return object;
}

Value taken_line_value(const TakenLine& line) {
    Value object;
    object.set("ref", line.job).set("entries", count_of(line.in_file)).set("new", count_of(line.fresh));
    return object;
}

Value taken_value(const TakenIn& taken) {
    Value object;
    object.set("file", taken.file).set("jobs", rows_of(taken.jobs, taken_line_value));
    object.set("entries", count_of(taken.entries)).set("new", count_of(taken.fresh));
    object.set("photos", count_of(taken.photos)).set("to_settle", count_of(taken.to_settle));
    object.set("new_devices", list_of(taken.new_devices)).set("remarks", list_of(taken.remarks));
    return object;
}

Value erased_line_value(const ErasedLine& line) {
    Value object;
    object.set("ref", line.job).set("values", count_of(line.values)).set("photos", count_of(line.photos));
    return object;
}

Value device_value(const DeviceLine& line) {
    Value object;
    object.set("device", line.device).set("entries", count_of(line.entries)).set("this", line.is_this);
    object.set("first", line.first_when).set("last", line.last_when);
    put(object, "revoked", line.revoked);
    return object;
}

Value salvaged_device_value(const SalvagedDeviceLine& line) {
    Value object;
    object.set("device", line.device).set("entries", count_of(line.entries));
    object.set("written", count_of(line.written));
    return object;
}

Value gap_value(const GapLine& gap) {
    Value object;
    object.set("ref", gap.job).set("device", gap.device);
    object.set("from", count_of(gap.from)).set("to", count_of(gap.to));
    return object;
}

} // namespace

std::string json_of(const std::vector<SupplementLine>& supplements) {
    return text_of(rows_of(supplements, supplement_value));
}

std::string json_of(const SalvagedBook& salvaged) {
    Value object;
    object.set("file", salvaged.file).set("book", salvaged.book).set("whole", salvaged.whole);
    object.set("entries", count_of(salvaged.entries)).set("personal", count_of(salvaged.personal));
    object.set("texts", count_of(salvaged.texts)).set("photos", count_of(salvaged.photos));
    object.set("devices", rows_of(salvaged.devices, salvaged_device_value));
    object.set("gaps", rows_of(salvaged.gaps, gap_value)).set("refused", count_of(salvaged.refused));
    object.set("named", count_of(salvaged.named));
    object.set("missing_personal", count_of(salvaged.missing_personal));
    object.set("missing_texts", list_of(salvaged.missing_texts));
    object.set("missing_photos", list_of(salvaged.missing_photos));
    object.set("remarks", list_of(salvaged.remarks));
    return text_of(object);
}

std::string json_of(const ErasedAll& erased) {
    Value object;
    object.set("person", erased.person).set("jobs", rows_of(erased.jobs, erased_line_value));
    object.set("still_named", list_of(erased.still_named));
    return text_of(object);
}

std::string json_of(const std::vector<DeviceLine>& devices) {
    return text_of(rows_of(devices, device_value));
}

std::string json_of(const HandedOut& handed) {
    Value object;
    object.set("file", handed.file).set("job", handed.job).set("digest", handed.digest);
    object.set("entries", count_of(handed.entries)).set("photos", count_of(handed.photos));
    object.set("missing_photos", list_of(handed.missing_photos));
    return text_of(object);
}

std::string json_of(const std::vector<TakenIn>& taken) { return text_of(rows_of(taken, taken_value)); }

std::string json_of(const SettleList& list) {
    return text_of(rows_of(list.items, [&](const SettleLine& item) { return item_value(item, list.job); }));
}

} // namespace undersheet::desk
