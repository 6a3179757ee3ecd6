using System.Text;
using CsCheck;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Tests.People;

public sealed class TimeCodeTests
{
    private static readonly byte[] Key = Encoding.ASCII.GetBytes("12345678901234567890");

    /// <summary>RFC 6238, appendix B, the rows of SHA-1; the last six of the eight digits there.</summary>
    [Theory]
    [InlineData(59, "287082")]
    [InlineData(1_111_111_109, "081804")]
    [InlineData(1_111_111_111, "050471")]
    [InlineData(1_234_567_890, "005924")]
    [InlineData(2_000_000_000, "279037")]
    [InlineData(20_000_000_000, "353130")]
    public void The_codes_of_the_standard_come_out(long seconds, string code) =>
        Assert.Equal(code, TimeCode.Of(Key, TimeCode.StepAt(DateTimeOffset.FromUnixTimeSeconds(seconds))));

    /// <summary>RFC 4226, appendix D.</summary>
    [Fact]
    public void The_codes_of_the_older_standard_come_out() => Assert.Equal(
        ["755224", "287082", "359152", "969429", "338314", "254676", "287922", "162583", "399871", "520489"],
        Enumerable.Range(0, 10).Select(count => TimeCode.Of(Key, count)));

    /// <summary>RFC 4648, section 10, without padding.</summary>
    [Theory]
    [InlineData("", "")]
    [InlineData("f", "MY")]
    [InlineData("fo", "MZXQ")]
    [InlineData("foo", "MZXW6")]
    [InlineData("foob", "MZXW6YQ")]
    [InlineData("fooba", "MZXW6YTB")]
    [InlineData("foobar", "MZXW6YTBOI")]
    public void A_key_is_spelled_as_the_standard_spells_it(string key, string letters)
    {
        Assert.Equal(letters, TimeCode.ToLetters(Encoding.ASCII.GetBytes(key)));
        Assert.Equal(Encoding.ASCII.GetBytes(key), TimeCode.FromLetters(letters));
    }

    [Fact]
    public void Any_key_can_be_spelled_and_read_again() =>
        Gen.Byte.Array[0, 64].Sample(key => TimeCode.FromLetters(TimeCode.ToLetters(key)).SequenceEqual(key));

    [Fact]
    public void A_code_is_good_in_its_step_and_beside_it_and_not_further_off()
    {
        var now = DateTimeOffset.FromUnixTimeSeconds(1_800_000_000);
        var step = TimeCode.StepAt(now);

        Assert.All([-1, 0, 1], off => Assert.Equal(step + off, TimeCode.Matching(Key, TimeCode.Of(Key, step + off), null, now)));
        Assert.All([-2, 2], off => Assert.Null(TimeCode.Matching(Key, TimeCode.Of(Key, step + off), null, now)));
    }

    [Fact]
    public void A_code_that_was_taken_is_not_taken_again_and_none_before_it()
    {
        var now = DateTimeOffset.FromUnixTimeSeconds(1_800_000_000);
        var step = TimeCode.StepAt(now);

        Assert.Null(TimeCode.Matching(Key, TimeCode.Of(Key, step), step, now));
        Assert.Null(TimeCode.Matching(Key, TimeCode.Of(Key, step - 1), step, now));
        Assert.Equal(step + 1, TimeCode.Matching(Key, TimeCode.Of(Key, step + 1), step, now));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("12345")]
    [InlineData("twelve")]
    public void What_is_no_code_is_not_taken(string? typed) =>
        Assert.Null(TimeCode.Matching(Key, typed, null, DateTimeOffset.FromUnixTimeSeconds(59)));

    [Fact]
    public void Spaces_between_the_digits_do_not_matter() =>
        Assert.Equal(1, TimeCode.Matching(Key, " 287 082 ", null, DateTimeOffset.FromUnixTimeSeconds(59)));
}
