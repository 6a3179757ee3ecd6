using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Data.Conversions;

/// <summary>Kinds of findings and adjustments, causes, and pieces of advice, are stored by their lasting names.</summary>
internal static class KindConverters
{
    private const int LongestName = 60;

    public static void AddTo(ModelConfigurationBuilder conventions)
    {
        conventions.Properties<FindingKindId>().HaveConversion<FindingKindConverter>().HaveMaxLength(LongestName);
        conventions.Properties<AdjustmentKindId>().HaveConversion<AdjustmentKindConverter>().HaveMaxLength(LongestName);
        conventions.Properties<CauseId>().HaveConversion<CauseConverter>().HaveMaxLength(CauseJudged.LongestCause);
        conventions.Properties<AdviceId>().HaveConversion<AdviceConverter>().HaveMaxLength(AdviceId.Longest);
    }

    private sealed class CauseConverter() : ValueConverter<CauseId, string>(cause => cause.Value, stored => new CauseId(stored));

    private sealed class AdviceConverter() : ValueConverter<AdviceId, string>(advice => advice.Value, stored => new AdviceId(stored));

    private sealed class FindingKindConverter() : ValueConverter<FindingKindId, string>(
        kind => kind.Value, stored => new FindingKindId(stored));

    private sealed class AdjustmentKindConverter() : ValueConverter<AdjustmentKindId, string>(
        kind => kind.Value, stored => new AdjustmentKindId(stored));
}
