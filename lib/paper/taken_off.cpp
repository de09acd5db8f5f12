#include "paper/taken_off.h"

namespace undersheet::paper {

Result<job::TakeOff> taken_off(const job::Job& job, const Setting& setting, std::string_view paper) {
    if (setting.prices == nullptr)
        return Fault{Code::prices_malformed,
                     "the " + std::string(paper) + " is made by a price list, and none was given",
                     {},
                     "give --prices FILE; undersheet takeoff --example-prices writes one to fill in"};
    return job::take_off(job, setting.method, setting.prices);
}

} // namespace undersheet::paper
