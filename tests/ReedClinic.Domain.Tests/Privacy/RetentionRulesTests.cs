using ReedClinic.Domain.Privacy;

namespace ReedClinic.Domain.Tests.Privacy;

public sealed class RetentionRulesTests
{
    private static readonly DateTimeOffset Sign = new(2021, 3, 1, 9, 0, 0, TimeSpan.Zero);

    [Theory]
    [InlineData(179, false)]
    [InlineData(180, true)]
    public void A_draft_is_over_after_180_days_to_the_day(int days, bool over) =>
        Assert.Equal(over, RetentionRules.IsOver(Sign, RetentionRules.UntouchedDraft, Sign.AddDays(days)));

    [Theory]
    [InlineData("2026-01-29", null, RecordsCare.Keep)] // 31 days before the five years are over
    [InlineData("2026-01-30", null, RecordsCare.Tell)]
    [InlineData("2030-01-01", null, RecordsCare.Tell)] // never without a word, however late
    [InlineData("2026-02-10", "2026-01-30", RecordsCare.Keep)]
    [InlineData("2026-03-01", "2026-01-30", RecordsCare.LetGo)]
    [InlineData("2026-03-01", "2026-02-20", RecordsCare.Keep)] // told late: the thirty days are theirs
    [InlineData("2026-03-22", "2026-02-20", RecordsCare.LetGo)]
    [InlineData("2026-03-01", "2020-01-01", RecordsCare.Tell)] // that was about another time
    public void People_are_told_thirty_days_before_their_records_go(string now, string? told, RecordsCare care) =>
        Assert.Equal(care, RetentionRules.CareFor(Sign, 5, told is null ? null : At(told), true, At(now)));

    [Theory]
    [InlineData("2026-03-01", null, RecordsCare.Keep)] // the five years are over; then once more as long as a notice
    [InlineData("2026-03-30", null, RecordsCare.Keep)]
    [InlineData("2026-03-31", null, RecordsCare.LetGo)]
    [InlineData("2026-03-31", "2020-01-01", RecordsCare.LetGo)] // that was about another time
    [InlineData("2026-03-01", "2026-01-30", RecordsCare.LetGo)] // told, before the address was lost
    public void Who_cannot_be_told_is_kept_thirty_days_longer_and_not_for_ever(string now, string? told, RecordsCare care) =>
        Assert.Equal(care, RetentionRules.CareFor(Sign, 5, told is null ? null : At(told), false, At(now)));

    [Fact]
    public void A_leap_day_does_not_make_the_time_longer() =>
        Assert.Equal(
            RecordsCare.LetGo,
            RetentionRules.CareFor(At("2024-02-29"), 1, At("2025-01-20"), true, At("2025-02-28")));

    private static DateTimeOffset At(string day) => DateTimeOffset.Parse(day + "T09:00:00Z", System.Globalization.CultureInfo.InvariantCulture);
}
