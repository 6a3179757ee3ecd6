namespace ReedClinic.Domain.People;

/// <summary>The studio itself. One installation is one studio, so there is one row, made when its first owner comes in.</summary>
public sealed class Studio
{
    /// <summary>The only identifier there is: a second studio can't be stored.</summary>
    public const int OnlyId = 1;

    /// <summary>The longest address, in UTF-16 characters.</summary>
    public const int LongestPostTo = 400;

    /// <summary>Opens the studio.</summary>
    /// <param name="name">What the studio is called in letters.</param>
    /// <param name="firstOwner">The account that opened it.</param>
    /// <param name="openedAt">When.</param>
    public Studio(string name, AccountId firstOwner, DateTimeOffset openedAt)
    {
        Name = name;
        FirstOwner = firstOwner;
        OpenedAt = openedAt;
    }

    /// <summary>Always <see cref="OnlyId"/>.</summary>
    public int Id { get; private set; } = OnlyId;

    /// <summary>What the studio is called in letters.</summary>
    public string Name { get; private set; }

    /// <summary>The account that opened it.</summary>
    public AccountId FirstOwner { get; private set; }

    /// <summary>When it was opened.</summary>
    public DateTimeOffset OpenedAt { get; private set; }

    /// <summary>The address that parcels are posted to, on several lines; null until the owner has said it.</summary>
    public string? PostTo { get; private set; }

    /// <summary>Changes with every change.</summary>
    public Guid Version { get; private set; }

    /// <summary>Says what the studio is called and where parcels are posted to.</summary>
    /// <param name="name">The name, as <see cref="PersonName"/> reads it.</param>
    /// <param name="postTo">The address, or null.</param>
    public void Describe(string name, string? postTo)
    {
        Name = name;
        PostTo = postTo;
    }
}
