// The desk's answers as JSON, for scripts and phones; schema/<name>.schema.json says what stands in each.
//
// Promises: two blanks an indent, keys ascending, a line feed at the end. A list about a job names the job in each row.
#pragma once

#include "desk/answers.h"
#include "desk/requests.h"

namespace undersheet::desk {

[[nodiscard]] std::string json_of(const Started& started);
[[nodiscard]] std::string json_of(const Firm& firm);
[[nodiscard]] std::string json_of(const std::vector<PersonLine>& people);
[[nodiscard]] std::string json_of(const std::vector<JobLine>& jobs);
[[nodiscard]] std::string json_of(const std::vector<SupplementLine>& supplements);
[[nodiscard]] std::string json_of(const Kept& kept);
[[nodiscard]] std::string json_of(const KeptMany& kept);
[[nodiscard]] std::string json_of(const Findings& findings);
[[nodiscard]] std::string json_of(const Stages& stages);
[[nodiscard]] std::string json_of(const Why& why);
[[nodiscard]] std::string json_of(const TakeOff& made);
[[nodiscard]] std::string json_of(const DayAnswer& made);
[[nodiscard]] std::string json_of(const Punch& punch);
[[nodiscard]] std::string json_of(const History& history);
[[nodiscard]] std::string json_of(const ErasedAll& erased);
[[nodiscard]] std::string json_of(const std::vector<DeviceLine>& devices);
[[nodiscard]] std::string json_of(const HandedOut& handed);
[[nodiscard]] std::string json_of(const std::vector<TakenIn>& taken);
[[nodiscard]] std::string json_of(const SalvagedBook& salvaged);
[[nodiscard]] std::string json_of(const SettleList& list);
[[nodiscard]] std::string json_of(const Verified& verified);
[[nodiscard]] std::string json_of(const std::vector<KindLine>& kinds);

} // namespace undersheet::desk
