"""Nothing lost: runs killed at any moment, disks that are full, folders that go away."""
