using ReedClinic.Architecture.Tests.Reading;
using ReedClinic.Domain.People;

namespace ReedClinic.Architecture.Tests.Types;

public sealed class ValueTypesTests
{
    [Fact]
    public void Domain_values_never_change_once_made() => Found.None(ValueTypes.Violations(typeof(Actor).Assembly.GetTypes()));

    [Fact]
    public void A_plain_struct_is_seen() => Found.One(ValueTypes.Violations([typeof(PlainStruct)]), nameof(PlainStruct));

    [Fact]
    public void A_record_struct_that_can_be_written_is_seen() =>
        Assert.Equal(2, ValueTypes.Violations([typeof(OpenRecordStruct)]).Count()); // not readonly, and its property has a setter

    [Fact]
    public void A_record_with_a_setter_is_seen() => Found.One(ValueTypes.Violations([typeof(OpenRecord)]), nameof(OpenRecord.Cents));

    [Fact]
    public void A_readonly_record_struct_and_a_closed_record_pass() =>
        Found.None(ValueTypes.Violations([typeof(ClosedRecordStruct), typeof(ClosedRecord)]));

    private readonly struct PlainStruct;

    private record struct OpenRecordStruct(double Cents);

    private sealed record OpenRecord
    {
        public double Cents { get; set; }
    }

    private readonly record struct ClosedRecordStruct(double Cents);

    private sealed record ClosedRecord(double Cents);
}
